package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.LiveBench.CARD;
import static dev.loopgauge.cli.command.LiveBench.backend;
import static dev.loopgauge.cli.command.LiveBench.session;
import static dev.loopgauge.cli.command.LiveBench.wires;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.signal.Decibels;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MeasureCommandTest {
  private static final String[] SHORT = {
    "measure", "--seconds", "0.2", "--max-delay", "0.1", "--repeat", "2"
  };
  private static final String[] REFERENCED = {
    "--send", "2", "--return", "2", "--reference-send", "1", "--reference-return", "1"
  };
  private static final String[] SINGLE = {"--send", "2", "--return", "2"};

  @TempDir Path data;
  private LiveBench bench;

  @BeforeEach
  void open() {
    bench = new LiveBench(data);
  }

  @Test
  void saysWhereAndHowLoudAndPlaysAfterEnter() {
    ScriptedSession opened = session("java-sound", 256, good());
    Run run = bench.typed("\n", backend("java-sound", opened), args("java-sound", REFERENCED));

    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals(
        """
        Sends 1, 2 of "Stage card" play a sweep at -20 dBFS for 0.2 s, 2 times, up to 4 if sound is lost.
        Mute the loudspeakers, take in-ears out.
        Enter to play, Ctrl-C to stop.
        Turn 1 of 2: return 2 peaks at -26 dBFS.
        Turn 2 of 2: return 2 peaks at -26 dBFS.
        """,
        run.err());
    assertEquals(-20, Decibels.ofFactor(opened.takes().get(0).sends().get(0).peak()), 0.1);
    assertTrue(opened.closed());
    Map<?, ?> measured = measurement(json("\n", good(), REFERENCED));
    assertEquals(595, number(measured, "delaySamples"), 0.01);
    assertEquals("referenced", measured.get("method"));
    assertEquals(2, measured.get("repeats"));
  }

  @Test
  void saysThatADriverSilencesOtherPrograms() {
    ScriptedSession opened =
        new ScriptedSession(session("java-sound", 256, good()).info().takenAlone(), good());
    Run run = bench.typed("\n", backend("java-sound", opened), args("java-sound", REFERENCED));
    assertTrue(
        run.err()
            .lines()
            .findFirst()
            .orElseThrow()
            .endsWith(". Its driver takes the device for itself: other programs may fall silent."),
        run.err());
  }

  @Test
  void aDeviceThatOthersLoseOpensAfterEnterAndNotBefore() {
    ScriptedBackend left = alone();
    assertEquals(ExitCode.USAGE, bench.typed("", left, args("java-sound", REFERENCED)).exitCode());
    assertEquals(List.of(), left.requests());

    Run run = bench.typed("\n", alone(), args("java-sound", REFERENCED));
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertTrue(
        run.err()
            .startsWith(
                """
                Sends 1, 2 of "Stage card" play a sweep at -20 dBFS for 0.2 s, 2 times, up to 4 if sound is lost. Its driver takes the device for itself: other programs may fall silent.
                Mute the loudspeakers, take in-ears out.
                Enter to play, Ctrl-C to stop.
                Turn 1 of 2"""),
        run.err());
  }

  private ScriptedBackend alone() {
    return backend(
            "java-sound",
            new ScriptedSession(session("java-sound", 256, good()).info().takenAlone(), good()))
        .taking("Stage card");
  }

  @Test
  void withoutATerminalNothingIsOpenedUnlessToldTo() {
    ScriptedBackend card = backend("jack", session("jack", 256, good()));
    Run refused = bench.run(List.of(card), args("jack", REFERENCED));

    assertEquals(ExitCode.USAGE, refused.exitCode());
    assertTrue(refused.err().contains("nothing was played"), refused.err());
    assertEquals(List.of(), card.requests());
    Run told = bench.run(List.of(card), args("jack", REFERENCED, "--yes"));
    assertEquals(ExitCode.GOOD, told.exitCode(), told.err());
    assertFalse(told.err().contains("Enter"), told.err());
  }

  @Test
  void aTerminalThatClosesPlaysNothing() {
    ScriptedSession opened = session("jack", 256, good());
    Run run = bench.typed("", backend("jack", opened), args("jack", REFERENCED));

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals(List.of(), opened.takes());
  }

  @Test
  void loudOnlyWhenAskedFor() {
    ScriptedSession opened = session("jack", 256, good());
    ScriptedBackend card = backend("jack", opened);
    Run refused = bench.typed("\n", card, args("jack", REFERENCED, "--level", "-5.9"));

    assertEquals(ExitCode.USAGE, refused.exitCode());
    assertTrue(refused.err().contains("found -5.9 dBFS"), refused.err());
    assertEquals(List.of(), card.requests());
    Run loud = bench.typed("\n", card, args("jack", REFERENCED, "--level", "-5.9", "--loud"));
    assertEquals(ExitCode.GOOD, loud.exitCode(), loud.err());
    assertEquals(-5.9, Decibels.ofFactor(opened.takes().get(0).sends().get(0).peak()), 0.1);
  }

  @Test
  void aSingleLoopWithoutCalibrationIsANumberWithAFinding() {
    Run run = json("\n", wires(1).join(0, 0, CARD + 595, 1), SINGLE);

    assertEquals(ExitCode.GOOD, run.exitCode());
    assertEquals("uncalibrated", measurement(run).get("method"));
    assertEquals(CARD + 595, number(measurement(run), "delaySamples"), 0.01);
    assertEquals(List.of("uncalibrated"), codes(run));
  }

  @Test
  void calibrateLeadsThroughCableAndRigInOneSession() {
    ScriptedSession opened =
        session(
            "java-sound", 256, wires(1).join(0, 0, CARD, 1), wires(1).join(0, 0, CARD + 595, 1));
    ScriptedBackend card = backend("java-sound", opened);
    Run run =
        bench.typed("\n\n", card, args("java-sound", SINGLE, "--calibrate", "--yes", "--json"));

    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals("calibrated", measurement(run).get("method"));
    assertEquals(595, number(measurement(run), "delaySamples"), 0.01);
    assertEquals(1, card.requests().size());
    List<String> lines = run.err().lines().toList();
    assertEquals(
        "1. Join send 2 straight to return 2 with a cable. Enter to play, Ctrl-C to stop.",
        lines.get(2));
    assertEquals("Turn 2 of 2: return 2 peaks at -20 dBFS.", lines.get(4));
    assertTrue(lines.get(5).startsWith("2. Patch send 2 into the rig"), run.err());
  }

  @Test
  void withoutACableTheRigIsNotMeasured() {
    ScriptedSession opened = session("java-sound", 256, wires(1));
    Run run =
        bench.typed(
            "\n\n", backend("java-sound", opened), args("java-sound", SINGLE, "--calibrate"));

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertEquals(1, opened.takes().size());
    assertTrue(run.err().contains("That was the cable"), run.err());
  }

  @Test
  void lostSoundIsNeverANumber() {
    Run run = json("\n", good().but(Incident.Kind.DROPOUT, "2 xruns"), REFERENCED);

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertEquals("not-trustworthy", run.json().get("outcome"));
    assertNull(run.json().get("measurement"));
    assertEquals(List.of("dropout"), codes(run));
  }

  @Test
  void aDeviceThatGoesAwayExitsWithFour() {
    Run run = json("\n", ScriptedSession.failing(CaptureException.Kind.GONE), REFERENCED);

    assertEquals(ExitCode.AUDIO, run.exitCode());
    assertEquals("gone", run.error("code"));
  }

  @Test
  void feedbackIsNoTrustworthyMeasurement() {
    Run run = json("\n", ScriptedSession.failing(CaptureException.Kind.FEEDBACK), REFERENCED);

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertEquals("feedback", run.error("code"));
  }

  @Test
  void faultsAreForTheSimulatedRigAlone() {
    Run run = bench.typed("\n", backend("jack"), args("jack", REFERENCED, "--fault", "silent"));

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().startsWith("--fault is for the simulated rig alone"), run.err());
  }

  @Test
  void aMissingChannelIsNamed() {
    Run run = bench.typed("\n", backend("jack"), args("jack", new String[] {"--send", "2"}));

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().startsWith("expected --return, found none"), run.err());
  }

  @Test
  void calibratingBesideAReferenceIsRefused() {
    Run run = bench.typed("\n", backend("jack"), args("jack", REFERENCED, "--calibrate"));

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().startsWith("expected --calibrate or a reference"), run.err());
  }

  /** In the order of the session: send 2, send 1; return 2, return 1. */
  private static dev.loopgauge.capture.Wires good() {
    return wires(2).join(0, 0, CARD + 595, 0.5).join(1, 1, CARD, 1);
  }

  private Run json(String typed, ScriptedSession.Answer answer, String... channels) {
    ScriptedBackend card = backend("java-sound", session("java-sound", 256, answer));
    return bench.typed(typed, card, args("java-sound", channels, "--json"));
  }

  private static String[] args(String backend, String[] channels, String... more) {
    return Stream.of(SHORT, new String[] {"--backend", backend}, channels, more)
        .flatMap(Stream::of)
        .toArray(String[]::new);
  }

  private static Map<?, ?> measurement(Run run) {
    return (Map<?, ?>) run.json().get("measurement");
  }

  private static double number(Map<?, ?> map, String key) {
    return ((Number) map.get(key)).doubleValue();
  }

  private static List<Object> codes(Run run) {
    return ((List<?>) run.json().get("findings"))
        .stream().<Object>map(finding -> ((Map<?, ?>) finding).get("code")).toList();
  }
}
