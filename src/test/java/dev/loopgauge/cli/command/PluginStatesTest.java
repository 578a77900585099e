package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.LiveBench.CARD;
import static dev.loopgauge.cli.command.LiveBench.backend;
import static dev.loopgauge.cli.command.LiveBench.session;
import static dev.loopgauge.cli.command.LiveBench.wires;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.GraphSession;
import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.capture.ScriptedGraph;
import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A path of 526 samples with a plug-in that adds 240 to it. */
class PluginStatesTest {
  private static final String[] REFERENCED = {
    "--send=2", "--return=2", "--reference-send=1", "--reference-return=1"
  };

  @TempDir Path data;

  @Test
  void eachStateIsHeldAgainstWhatIsReportedThen() {
    ScriptedBackend card = backend("java-sound", at(766), at(526), at(766));
    Run run = guided("\n240\n\n\n240\n", card, "--states=active,bypassed,reloaded", "--json");

    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertEquals("measured", run.json().get("outcome"));
    assertEquals(240, number(state(run, 0), "movedSamples"), 0.05);
    assertNull(state(run, 1).get("movedSamples"));
    assertEquals(240, number(state(run, 2), "reportedSamples"));
    assertEquals(240, number((Map<?, ?>) run.json().get("hostCheck"), "measuredSamples"), 0.05);
    assertTrue(run.err().contains("Put the plug-in into this state: reloaded."), run.err());
  }

  @Test
  void aPluginThatIsLaterAfterReloadingIsFound() {
    ScriptedBackend card = backend("java-sound", at(766), at(526), at(830));
    Run run = guided("\n240\n\n\n240\n", card, "--states=active,bypassed,reloaded");

    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out() + run.err());
    assertTrue(run.out().startsWith("NOT AS REPORTED when reloaded."), run.out());
    assertTrue(
        run.out().replaceAll("\\s+", " ").contains("the host can't compensate the other 64"),
        run.out());
  }

  @Test
  void saysThatOtherChannelsMoveToo() {
    ScriptedBackend card = backend("java-sound", at(766), at(340), at(526), at(100));
    Run run = guided("\n240\n\n", card, "--states=active,bypassed", "--witness-return=3", "--json");
    Run text =
        guided(
            "\n240\n\n",
            backend("java-sound", at(766), at(340), at(526), at(100)),
            "--states=active,bypassed",
            "--witness-return=3");

    assertEquals(240, number(state(run, 0), "othersMovedSamples"), 0.05);
    assertEquals(List.of(3, 1), card.requests().get(1).returns());
    assertEquals(List.of(2, 1), card.requests().get(1).sends());
    assertTrue(text.out().replaceAll("\\s+", " ").contains("the host pads it"), text.out());
  }

  @Test
  void askedThroughAProgramTheGraphSaysWhatIsReported() {
    ScriptedBackend jack =
        backend(
            "jack",
            graph(240, ScriptedGraph.both(240)),
            graph(0, ScriptedGraph.both(0)),
            graph(240, ScriptedGraph.both(0)));
    Run run =
        typed(
            "\n\n\n\n",
            jack,
            "--through=host",
            "--states=active,bypassed,reloaded",
            "--backend=jack");

    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out() + run.err());
    assertTrue(run.out().startsWith("NOT AS REPORTED when reloaded."), run.out());
    assertTrue(run.out().contains("reports none"), run.out());
  }

  @Test
  void aStateThatCantBeReadLeavesNoNumber() {
    ScriptedBackend card =
        backend("java-sound", at(766), session("java-sound", 256, wires(2).join(1, 1, CARD, 1)));
    Run run = guided("\n\n\n\n", card, "--states=active,bypassed");

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertTrue(run.out().contains("when bypassed: "), run.out());
  }

  @Test
  void refusesWhatCantBeGuided() {
    ScriptedBackend card = backend("java-sound", at(766));
    Run alone =
        new LiveBench(data)
            .run(List.of(card), args("--backend=java-sound", "--states=active,bypassed"));
    assertEquals(ExitCode.USAGE, alone.exitCode());
    assertTrue(alone.err().contains("needs somebody at a terminal"), alone.err());

    Run one = guided("\n", card, "--states=active");
    assertTrue(one.err().contains("two states or more"), one.err());

    Run shifting =
        typed(
            "\n\n",
            card,
            "--backend=java-sound",
            "--states=active,bypassed",
            "--send=1",
            "--return=1");
    assertEquals(ExitCode.USAGE, shifting.exitCode());
    assertTrue(shifting.err().contains("--states needs a reference"), shifting.err());
  }

  private static AudioSession at(int samples) {
    return session("java-sound", 256, wires(2).join(0, 0, CARD + samples, 0.5).join(1, 1, CARD, 1));
  }

  private static AudioSession graph(int samples, GraphSession.Stated stated) {
    ScriptedSession session = session("jack", 256, wires(1).join(0, 0, samples, 1));
    return new ScriptedGraph(session, stated);
  }

  private Run guided(String typed, ScriptedBackend card, String... more) {
    String[] all =
        Stream.of(REFERENCED, new String[] {"--backend=java-sound"}, more)
            .flatMap(Stream::of)
            .toArray(String[]::new);
    return typed(typed, card, all);
  }

  private Run typed(String typed, ScriptedBackend card, String... more) {
    return new LiveBench(data).typed(typed, card, args(more));
  }

  private static String[] args(String... more) {
    String[] args = {"host", "--seconds=0.3", "--repeat=1", "--max-delay=0.1"};
    return Stream.of(args, more).flatMap(Stream::of).toArray(String[]::new);
  }

  private static Map<?, ?> state(Run run, int place) {
    return (Map<?, ?>) ((List<?>) run.json().get("states")).get(place);
  }

  private static double number(Map<?, ?> map, String key) {
    return ((Number) map.get(key)).doubleValue();
  }
}
