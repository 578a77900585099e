package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.LiveBench.backend;
import static dev.loopgauge.cli.command.LiveBench.session;
import static dev.loopgauge.cli.command.LiveBench.wires;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.GraphSession;
import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.capture.ScriptedGraph;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ThroughProgramTest {
  @TempDir Path data;

  @Test
  void patchesBothSidesToTheFirstPortsOfTheProgram() {
    ScriptedBackend jack = host(240, ScriptedGraph.both(240));
    Run run = through(jack, "--json");

    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals(Optional.of("host"), jack.requests().get(0).output());
    assertEquals(Optional.of("host"), jack.requests().get(0).input());
    assertEquals(List.of(1), jack.requests().get(0).sends());
    assertEquals(true, ((Map<?, ?>) run.json().get("hostCheck")).get("agrees"));
    assertEquals("sample-locked", ((Map<?, ?>) run.json().get("measurement")).get("method"));
  }

  @Test
  void aHostThatStatesNothingAndAddsSomethingIsOutside() {
    Run run = through(host(240, ScriptedGraph.both(0)));

    assertEquals(ExitCode.OUTSIDE, run.exitCode());
    assertTrue(run.out().contains("reports none"), run.out());
  }

  @Test
  void saysThatTheTwoEndsReportDifferently() {
    Run run = through(host(240, ScriptedGraph.ends(0, 240)));

    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    String text = run.out().replaceAll("\\s+", " ");
    assertTrue(text.contains("240 samples up to the return, but 0 from the send on"), text);
  }

  @Test
  void needsAGraph() {
    ScriptedBackend card = backend("java-sound", session("java-sound", 256, wires(1)));
    Run run = through(card);

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().contains("use --backend jack"), run.err());
  }

  @Test
  void refusesAnOutputBesides() {
    Run run = through(host(240, ScriptedGraph.both(0)), "--output=system");

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().contains("found both"), run.err());
  }

  private static ScriptedBackend host(int delaySamples, GraphSession.Stated stated) {
    return backend(
        "jack",
        new ScriptedGraph(session("jack", 256, wires(1).join(0, 0, delaySamples, 1)), stated));
  }

  private Run through(ScriptedBackend backend, String... more) {
    String[] args = {
      "host",
      "--backend=" + backend.name(),
      "--through=host",
      "--seconds=0.2",
      "--max-delay=0.1",
      "--yes"
    };
    return new LiveBench(data)
        .run(List.of(backend), Stream.of(args, more).flatMap(Stream::of).toArray(String[]::new));
  }
}
