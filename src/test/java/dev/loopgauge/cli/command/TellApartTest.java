package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.LiveBench.CARD;
import static dev.loopgauge.cli.command.LiveBench.session;
import static dev.loopgauge.cli.command.LiveBench.wires;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.capture.ScriptedServer;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A loop of 128 + 100 samples that reads 128 more: a block of 128, or the host patched twice? */
class TellApartTest {
  @TempDir Path folder;
  private String chain = "";

  @BeforeEach
  void writeChain() throws IOException {
    chain =
        Files.writeString(
                folder.resolve("hall.yaml"),
                """
                chain: Hall
                sample-rate: 48000
                block-size: 64
                stages:
                  host: { blocks: 2 }
                  desk: { samples: 128 }
                paths:
                  vocal: { listener: house, stages: [host, desk] }
                """)
            .toString();
  }

  @Test
  void aDeskPatchedTwiceAddsTheSameThere() {
    ScriptedServer server = new ScriptedServer(64, at(384), at(512));
    Run run = run(server, "--yes", "--tell-apart", "--json");

    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out() + run.err());
    assertEquals(List.of(128, 64), server.sizes());
    assertEquals(List.of("stage-twice"), causes(run));
    assertTrue(run.out().contains("'desk' once too often"), run.out());
    assertTrue(run.err().contains("back to 64 samples at the end"), run.err());
  }

  @Test
  void aHostPatchedTwiceReadsMoreThere() {
    Run run = run(new ScriptedServer(64, at(384), at(640)), "--yes", "--tell-apart", "--json");

    assertTrue(causes(run).contains("stage-twice"), run.out());
    assertTrue(run.out().contains("'host' once too often"), run.out());
    assertFalse(run.out().contains("'desk' once too often"), run.out());
  }

  /** The server runs at 64, as the chain file says; so it does not run at 128. */
  @Test
  void aServersOwnBlockSizeIsNeverBlamed() {
    Run run = run(new ScriptedServer(64, at(384)), "--yes", "--json");

    assertTrue(causes(run).contains("stage-twice"), run.out());
    assertFalse(causes(run).contains("block-size"), run.out());
  }

  @Test
  void withoutABudgetThereIsNothingToTellApart() {
    Run run =
        new LiveBench(folder)
            .run(
                List.of(new ScriptedServer(64)),
                "measure",
                "--backend=jack",
                "--send=2",
                "--return=2",
                "--yes",
                "--tell-apart");
    assertEquals(ExitCode.USAGE, run.exitCode(), run.out() + run.err());
    assertTrue(run.err().contains("expected a path's budget with --tell-apart"), run.err());
  }

  @Test
  void saysThatNoBlockSizeTells() {
    Run run =
        run(new ScriptedServer(64, at(256 + 9_999)), "--yes", "--tell-apart", "--max-delay=1");
    assertTrue(run.err().contains("No other block size tells"), run.err());
  }

  @Test
  void somebodyAtATerminalIsAsked() {
    ScriptedServer asked = new ScriptedServer(64, at(384), at(512));
    Run yes = new LiveBench(folder).typed("\ny\n", asked, args());
    ScriptedServer left = new ScriptedServer(64, at(384));
    Run no = new LiveBench(folder).typed("\n\n", left, args());

    assertTrue(
        yes.err().contains("A second measurement at a block of 128 tells them apart"), yes.err());
    assertTrue(yes.out().contains("measured again at a block of 128"), yes.out());
    assertEquals(List.of(), left.sizes());
    assertTrue(
        no.out()
            .replaceAll("\\s+", " ")
            .contains("set the host to a block of 128 and measure again."),
        no.out());
  }

  /** Said before anything is played: else what was measured would be lost with it. */
  @Test
  void aHostThatOnlyAPersonCanSetNeedsOne() {
    ScriptedBackend card = LiveBench.backend("java-sound", at(384));
    String[] args = {
      "measure",
      "--backend=java-sound",
      "--send=2",
      "--return=2",
      "--reference-send=1",
      "--reference-return=1",
      "--chain=" + chain,
      "--path=vocal",
      "--yes",
      "--tell-apart"
    };
    Run run = new LiveBench(folder).run(List.of(card), args);
    assertEquals(ExitCode.USAGE, run.exitCode(), run.out() + run.err());
    assertTrue(run.err().contains("--tell-apart needs somebody at a terminal"), run.err());
    assertEquals(List.of(), card.requests());
  }

  @Test
  void theBuiltInRigTellsToo() {
    Run run =
        run(
            new ScriptedServer(64),
            "--backend=simulated",
            "--fault=block-size=128",
            "--tell-apart",
            "--json");

    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out() + run.err());
    assertEquals(List.of("block-size"), causes(run));
  }

  /** As an earlier command leaves it that was killed at a block of 64. */
  private Path leftAt64() throws IOException {
    return Files.writeString(folder.resolve("server-block-size"), "1024 64\n");
  }

  @Test
  void whatAKilledCommandLeftIsOfferedToBeSetBack() throws IOException {
    Path note = leftAt64();
    ScriptedServer server = new ScriptedServer(64, at(384));
    Run run = new LiveBench(folder).typed("y\n\n\n", server, args());

    assertTrue(
        run.err()
            .contains(
                "still at a block of 64 samples: an earlier series was killed before it set it back"
                    + " to 1024."),
        run.err());
    assertEquals(List.of(1024), server.sizes());
    assertFalse(Files.exists(note));
  }

  @Test
  void nothingIsSetBackUnasked() throws IOException {
    Path note = leftAt64();
    ScriptedServer server = new ScriptedServer(64, at(384));
    Run run = run(server, "--yes");

    assertTrue(run.err().contains("Set it back in the server's settings"), run.err());
    assertEquals(List.of(), server.sizes());
    assertTrue(Files.exists(note));
  }

  @Test
  void aServerThatSomebodyHasSetSinceIsLeftAlone() throws IOException {
    Path note = leftAt64();
    Run run = run(new ScriptedServer(256, at(384)), "--yes");

    assertFalse(run.err().contains("still at a block"), run.err());
    assertFalse(Files.exists(note));
  }

  @Test
  void theNextSeriesSetsBackWhatTheKilledOneCouldNot() throws IOException {
    Path note = leftAt64();
    ScriptedServer server = new ScriptedServer(64, at(384), at(512));
    run(server, "--yes", "--tell-apart");

    assertEquals(List.of(128, 1024), server.sizes());
    assertFalse(Files.exists(note));
  }

  private static AudioSession at(int samples) {
    return session("jack", 64, wires(2).join(0, 0, CARD + samples, 0.5).join(1, 1, CARD, 1));
  }

  private Run run(ScriptedServer server, String... more) {
    return new LiveBench(folder).run(List.of(server), args(more));
  }

  private String[] args(String... more) {
    String[] args = {
      "measure",
      "--chain=" + chain,
      "--path=vocal",
      "--seconds=0.3",
      "--repeat=1",
      "--max-delay=0.1",
      "--send=2",
      "--return=2",
      "--reference-send=1",
      "--reference-return=1"
    };
    boolean named = Stream.of(more).anyMatch(option -> option.startsWith("--backend"));
    String[] backend = named ? new String[0] : new String[] {"--backend=jack"};
    return Stream.of(args, backend, more).flatMap(Stream::of).toArray(String[]::new);
  }

  private static List<?> causes(Run run) {
    Map<?, ?> comparison = (Map<?, ?>) run.json().get("comparison");
    return ((List<?>) comparison.get("explanations"))
        .stream().map(explanation -> ((Map<?, ?>) explanation).get("cause")).toList();
  }
}
