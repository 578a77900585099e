package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.LiveBench.CARD;
import static dev.loopgauge.cli.command.LiveBench.backend;
import static dev.loopgauge.cli.command.LiveBench.session;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.capture.Wires;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A round of three paths by two sends: two of them hear one sweep. */
class RoundCommandTest {
  private static final String CHAIN =
      """
      chain: Weir Theatre
      sample-rate: 48000
      block-size: 64
      reference: { send: 1, return: 1 }
      stages:
        desk: { samples: 30 }
        blocks: { blocks: 2 }
        box: { samples: 64 }
      paths:
        ears: { listener: in-ear, stages: [desk], patch: { send: 2, return: 2 } }
        house: { listener: stream, stages: [desk, blocks], patch: { send: 2, return: 3 } }
        stream: { listener: stream, stages: [desk, box], patch: { send: 3, return: 4 } }
        spare: { listener: stream, stages: [box] }
      """;

  @TempDir Path folder;
  private LiveBench bench;
  private Path chain;

  @BeforeEach
  void open() throws IOException {
    bench = new LiveBench(folder.resolve("data"));
    chain = Files.writeString(folder.resolve("weir.yaml"), CHAIN);
  }

  /** The session's sends are 2, 1, 3 and its returns 2, 1, 3, 4, in the order they are needed. */
  private static Wires patched(int ears, int house, int stream) {
    Wires wires = LiveBench.wires(4).join(1, 1, CARD, 0.8);
    if (ears > 0) {
      wires.join(0, 0, CARD + ears, 0.5);
    }
    return wires.join(0, 2, CARD + house, 0.5).join(2, 3, CARD + stream, 0.5);
  }

  private String[] args(String... more) {
    List<String> args = new ArrayList<>(List.of("round", chain.toString()));
    args.addAll(List.of("--backend=java-sound", "--seconds=0.5", "--max-delay=0.2"));
    args.addAll(List.of(more));
    return args.toArray(String[]::new);
  }

  private Run agreed(ScriptedSession card, String... more) {
    List<String> all = new ArrayList<>(List.of(more));
    all.add("--yes");
    return bench.run(List.of(backend("java-sound", card)), args(all.toArray(String[]::new)));
  }

  @Test
  void readsPathsOfOneSendFromOneSweepAndAsksOnce() {
    ScriptedSession card = session("java-sound", 256, patched(30, 158, 94));
    Run run = bench.typed("\n", backend("java-sound", card), args());

    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertEquals(2, card.takes().size());
    assertTrue(card.closed());
    assertTrue(
        run.err()
            .startsWith(
                "Sends 1, 2, 3 of \"Stage card\", in 2 turns: a sweep at -20 dBFS for 0.5 s, 3"
                    + " times each (up to 5 if sound is lost), about "),
        run.err());
    assertEquals(1, run.err().split("Enter to play", -1).length - 1, run.err());
    assertTrue(
        run.out().contains(": all 3 paths measured as they should be; 1 without a patch.\n"),
        run.out());
    assertTrue(run.err().contains("\nhouse  WITHIN: house matches its budget"), run.err());
  }

  /** The house is on send 2 and return 3, the ears on the same send and another return. */
  @Test
  void takesTheSkewOffThePathThatItIsOf() {
    String[] house = {"--send", "2", "--return", "3"};
    String[] rest = {
      "--backend=java-sound", "--reference-send=1", "--reference-return=1", "--seconds=0.5", "--yes"
    };
    ScriptedSession[] cables =
        Stream.generate(
                () ->
                    session(
                        "java-sound",
                        256,
                        LiveBench.wires(2).join(0, 0, CARD + 5, 1).join(1, 1, CARD, 1)))
            .limit(4)
            .toArray(ScriptedSession[]::new);
    Run kept =
        bench.run(
            List.of(backend("java-sound", cables)),
            Stream.of(new String[] {"calibrate"}, house, rest)
                .flatMap(Stream::of)
                .toArray(String[]::new));
    assertEquals(ExitCode.GOOD, kept.exitCode(), kept.out() + kept.err());

    Run run = agreed(session("java-sound", 256, patched(30, 158 + 5, 94)), "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertEquals(1, run.out().split("is taken off: \\+5.00", -1).length - 1, run.out());
  }

  @Test
  void isSilentOnSendsThatHaveNoTurn() {
    ScriptedSession card = session("java-sound", 256, patched(30, 158, 94));
    agreed(card);

    assertEquals(0, card.takes().get(0).sends().get(2).peak());
    assertTrue(card.takes().get(0).sends().get(0).peak() > 0.09);
    assertEquals(0, card.takes().get(1).sends().get(0).peak());
    assertTrue(card.takes().get(1).sends().get(1).peak() > 0.09);
  }

  @Test
  void namesTheWorstFirstAndHoldsEachDocument() {
    Run run = agreed(session("java-sound", 256, patched(30, 222, 94)), "--json");

    assertEquals(ExitCode.OUTSIDE, run.exitCode());
    assertEquals("bad", run.json().get("standing"));
    assertEquals("outside-budget", run.json().get("outcome"));
    Map<?, ?> house = (Map<?, ?>) ((List<?>) run.json().get("paths")).get(1);
    assertEquals("house", house.get("path"));
    assertEquals("bad", house.get("standing"));
    Map<?, ?> document = (Map<?, ?>) house.get("document");
    assertEquals(1, document.get("schema"));
    assertEquals("measure", document.get("command"));
    assertEquals(
        List.of(Map.of("path", "spare", "reason", "it has no patch")),
        run.json().get("notMeasured"));
  }

  @Test
  void goesOnWhereNothingIsHeardAndNobodyIsThere() {
    Run run = agreed(session("java-sound", 256, patched(0, 158, 94)));

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out());
    assertTrue(run.out().startsWith("UNDECIDED: ears; good: 2 paths;"), run.out());
  }

  @Test
  void measuresAgainWhereSomebodyAsksForIt() {
    ScriptedSession card = session("java-sound", 256, patched(0, 158, 94), patched(30, 158, 94));
    Run run = bench.typed("\nx\na\n", backend("java-sound", card), args());

    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertEquals(3, card.takes().size());
    assertTrue(run.err().contains("again (a), skip (s) or stop (q)?"), run.err());
    assertTrue(run.err().contains("Type a, s or q, then Enter."), run.err());
  }

  @Test
  void stopsWhereSomebodyStopsIt() {
    ScriptedSession card = session("java-sound", 256, patched(0, 158, 94));
    Run run = bench.typed("\nq\n", backend("java-sound", card), args());

    assertEquals(1, card.takes().size());
    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertTrue(run.out().contains(": somebody ended the round; "), run.out());
    assertTrue(run.out().contains(": 1 path; good:"), run.out());
  }

  @Test
  void feedbackEndsTheWholeRound() {
    ScriptedSession card =
        session(
            "java-sound",
            256,
            patched(30, 158, 94),
            ScriptedSession.failing(CaptureException.Kind.FEEDBACK));
    Run run = agreed(card);

    assertEquals(ExitCode.AUDIO, run.exitCode(), run.out());
    assertTrue(run.out().startsWith("STOPPED: scripted: FEEDBACK; "), run.out());
    assertTrue(run.out().contains("good: 2 paths"), run.out());
  }

  @Test
  void aLostTakeCostsItsPathsAlone() {
    ScriptedSession card =
        session(
            "java-sound",
            256,
            ScriptedSession.failing(CaptureException.Kind.SHORT),
            patched(30, 158, 94));
    Run run = agreed(card);

    assertEquals(ExitCode.AUDIO, run.exitCode(), run.out());
    assertEquals(2, card.takes().size());
    assertTrue(run.out().contains("not measured: scripted: SHORT"), run.out());
  }

  @Test
  void aCardThatNeverPlaysIsAFailure() {
    Run run =
        agreed(
            session("java-sound", 256, ScriptedSession.failing(CaptureException.Kind.GONE)),
            "--json");

    assertEquals(ExitCode.AUDIO, run.exitCode());
    assertEquals("gone", run.error("code"));
  }

  @Test
  void goesOnFromTheJournal() {
    String journal = "--journal=" + folder.resolve("round.db");
    ScriptedSession first =
        session(
            "java-sound",
            256,
            patched(30, 158, 94),
            ScriptedSession.failing(CaptureException.Kind.GONE));
    agreed(first, journal, "--show=S", "--when=before");
    Wires rest = LiveBench.wires(2).join(1, 1, CARD, 0.8).join(0, 0, CARD + 94, 0.5);
    ScriptedSession second = session("java-sound", 256, rest);
    Run run = agreed(second, journal, "--show=S", "--when=before", "--continue");

    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertEquals(1, second.takes().size());
    assertTrue(run.out().startsWith("GOOD: all 3 paths measured"), run.out());
  }

  @Test
  void continuesOnlyWithAJournal() {
    agreed(session("java-sound", 256, patched(30, 158, 94)), "--continue")
        .assertRefused("--continue goes on from what the journal holds, found no --journal");
  }

  @Test
  void playsNothingWhereNobodyAgrees() {
    ScriptedSession card = session("java-sound", 256, patched(30, 158, 94));
    Run run = bench.run(List.of(backend("java-sound", card)), args());

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(card.takes().isEmpty());
    assertFalse(run.err().contains("WITHIN"), run.err());
  }

  @Test
  void asksForAPatchWhereNoPathHasOne() throws IOException {
    Files.writeString(
        chain,
        """
        chain: Weir Theatre
        sample-rate: 48000
        block-size: 64
        stages: { desk: { samples: 30 } }
        paths:
          ears: { listener: in-ear, stages: [desk] }
        """);
    agreed(session("java-sound", 256, patched(30, 158, 94)))
        .assertRefused("no path of weir.yaml says where it is patched");
  }
}
