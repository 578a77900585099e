package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** From the command line through the built-in rig and back, with and without faults. */
@Tag("campaign")
class SimulatedMeasureTest {
  /** 12 + 38.4 + 2 * 64 + 219 + 11 = 408.4 samples; the air is not in the loop. */
  private static final String CHAIN =
      """
      chain: Mill Lane Playhouse
      sample-rate: 48000
      block-size: 64
      stages:
        stage-box-in:  { samples: 12, tolerance-samples: 1 }
        console:       { ms: 0.8 }
        host-blocks:   { blocks: 2 }
        host-fixed:    { samples: 219 }
        stage-box-out: { samples: 11 }
        throw:         { metres: 3 }
      paths:
        vocal-house:
          listener: house
          stages: [stage-box-in, console, host-blocks, host-fixed, stage-box-out, throw]
      """;

  private static final double LOOP = 408.4;

  @TempDir Path folder;
  private LiveBench bench;

  @BeforeEach
  void open() throws IOException {
    bench = new LiveBench(folder.resolve("data"));
    Files.writeString(folder.resolve("mill.yaml"), CHAIN);
  }

  @Test
  void asBudgetedIsWithinAndAsksNothing() {
    Run run = measure("--json");

    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals("", run.err());
    assertEquals("within-budget", run.json().get("outcome"));
    assertEquals(LOOP, delaySamples(run), 0.05);
    assertEquals("referenced", measurement(run).get("method"));
    assertEquals(3, measurement(run).get("repeats"));
  }

  @Test
  void theVerdictComesFirst() {
    assertTrue(measure().out().startsWith("WITHIN"), measure().out());
  }

  @Test
  void aHostAtTwiceTheBlockSizeIsLate() {
    Run run = measure("--fault", "block-size=128", "--json");

    assertEquals(ExitCode.OUTSIDE, run.exitCode());
    assertEquals("outside-budget", run.json().get("outcome"));
    Map<?, ?> comparison = (Map<?, ?>) run.json().get("comparison");
    assertEquals("late", comparison.get("verdict"));
    assertEquals(128, ((Number) comparison.get("differenceSamples")).doubleValue(), 0.05);
  }

  @Test
  void anInvertedReturnIsFound() {
    Run run = measure("--fault", "inverted", "--json");

    assertEquals(ExitCode.OUTSIDE, run.exitCode());
    assertEquals("inverted", measurement(run).get("polarity"));
    assertTrue(codes(run).contains("inverted"), run.out());
    assertEquals(LOOP, delaySamples(run), 0.05);
  }

  @ParameterizedTest
  @CsvSource({
    "silent, no-return",
    "wrong-signal, no-return",
    "clip=-6, clipped",
  })
  void whatCannotBeTrustedIsNoNumber(String fault, String code) {
    Run run = measure("--fault", fault, "--json");

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out());
    assertEquals("not-trustworthy", run.json().get("outcome"));
    assertNull(run.json().get("measurement"));
    assertTrue(codes(run).contains(code), run.out());
  }

  @ParameterizedTest
  @ValueSource(strings = {"lost-block=1.5", "lost-block=2.5"})
  void aBlockLostBetweenRepeatsLeavesItUndecided(String fault) {
    Run run = measure("--fault", fault, "--json");

    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out());
    assertEquals("undecided", run.json().get("outcome"));
    assertTrue(codes(run).contains("dropout"), run.out());
  }

  /** The house hears up to 15 ms late; the loop takes 8.5 ms, and the air of 3 m 8.7 ms. */
  @Tag("campaign")
  @Test
  void clocksThatDriftApartSayWhenTheListenersLimitIsPassed() throws IOException {
    Files.writeString(folder.resolve("mill.yaml"), CHAIN.replace("metres: 3", "metres: 0.3"));
    Run run = measure("--fault", "drift=100", "--json");
    assertEquals(List.of("clocks-not-locked"), codes(run), run.out());
    assertEquals(100, ((Number) measurement(run).get("clockDriftPpm")).doubleValue(), 0.1);
    Map<?, ?> comparison = (Map<?, ?>) run.json().get("comparison");
    Map<?, ?> limit = (Map<?, ?>) comparison.get("towardsLimit");
    double left = 15 - LOOP / 48; // the 0.3 m of air are not judged
    assertEquals(left / 0.1, ((Number) limit.get("seconds")).doubleValue(), 4, run.out());
    Run text = measure("--fault", "drift=100");
    assertTrue(
        text.out().contains("  limit      at this drift vocal-house passes its 15 ms limit"),
        text.out());
    Run ahead = measure("--fault", "drift=-100");
    assertTrue(ahead.out().contains("runs ahead by 100.0 ppm"), ahead.out());
    assertFalse(ahead.out().contains("limit  "), ahead.out());
  }

  @Test
  void feedbackStopsIt() {
    Run run = measure("--fault", "feedback", "--json");

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out());
    assertEquals("feedback", run.error("code"));
  }

  @ParameterizedTest
  @CsvSource({"gone, gone", "short, short"})
  void aCardThatFailsExitsWithFour(String fault, String code) {
    Run run = measure("--fault", fault, "--json");

    assertEquals(ExitCode.AUDIO, run.exitCode());
    assertEquals(code, run.error("code"));
  }

  @Test
  void withoutAReferenceThereIsNeverAVerdict() {
    Run run = measure("--send", "2", "--return", "2", "--json");

    assertEquals(ExitCode.OUTSIDE, run.exitCode());
    assertEquals("undecided", run.json().get("outcome"));
    assertEquals("uncalibrated", measurement(run).get("method"));
    assertTrue(codes(run).contains("uncalibrated"), run.out());
  }

  @Test
  void aReferenceOnTheWrongReturnIsRefused() {
    Run run =
        measure(
            "--send",
            "1",
            "--return",
            "1",
            "--reference-send",
            "1",
            "--reference-return",
            "2",
            "--json");

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertTrue(codes(run).contains("no-reference"), run.out());
  }

  @Test
  void theSameSeedGivesTheSameDocument() {
    assertEquals(measure("--json", "--seed", "7").out(), measure("--json", "--seed", "7").out());
  }

  @Test
  void anotherCardDelayMakesNoDifference() {
    for (int seed = 1; seed <= 5; seed++) {
      Run run = measure("--json", "--seed", String.valueOf(seed));
      assertEquals(LOOP, delaySamples(run), 0.05, "seed " + seed);
    }
  }

  @Tag("campaign")
  @ParameterizedTest
  @ValueSource(strings = {"click", "mls"})
  void eachStimulusFindsTheSame(String kind) {
    assertEquals(LOOP, delaySamples(measure("--json", "--stimulus", kind)), 0.05);
  }

  @Test
  void patchFindsBothCables() {
    Run run = patch();

    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertTrue(run.out().startsWith("PATCHED as asked."), run.out());
  }

  @Test
  void patchFindsAMutedPath() {
    Run run = patch("--fault", "silent", "--json");

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertEquals("not-patched", run.json().get("outcome"));
    assertEquals(List.of(2), run.json().get("silentReturns"));
  }

  @Test
  void calibratingByHandIsForRealCards() {
    Run run = measure("--send", "2", "--return", "2", "--calibrate");

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().startsWith("--calibrate needs a sound card"), run.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"silence", "gain=loud", "absent=nothing-like-this"})
  void anUnknownFaultIsRefused(String fault) {
    assertEquals(ExitCode.USAGE, measure("--fault", fault).exitCode());
  }

  @Test
  void itNeedsAChainToImitate() {
    Run run = bench.run(List.of(), "measure", "--backend", "simulated");

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().startsWith("expected a chain file and --path"), run.err());
  }

  @Test
  void aProfileMayBeOfTheRig() {
    bench.run(List.of(), "profile", "save", "rig", "--backend", "simulated", "--stimulus", "mls");
    Run run =
        bench.run(
            List.of(),
            "measure",
            "--profile",
            "rig",
            "--chain",
            chain(),
            "--path",
            "vocal-house",
            "--json");

    assertEquals(LOOP, delaySamples(run), 0.05);
  }

  private String chain() {
    return folder.resolve("mill.yaml").toString();
  }

  private Run measure(String... more) {
    String[] rig = {
      "measure", "--backend", "simulated", "--chain", chain(), "--path", "vocal-house"
    };
    return bench.run(List.of(), Stream.of(rig, more).flatMap(Stream::of).toArray(String[]::new));
  }

  private Run patch(String... more) {
    String[] rig = {"patch", chain(), "--backend", "simulated", "--path", "vocal-house"};
    return bench.run(List.of(), Stream.of(rig, more).flatMap(Stream::of).toArray(String[]::new));
  }

  private static Map<?, ?> measurement(Run run) {
    Map<?, ?> measurement = (Map<?, ?>) run.json().get("measurement");
    assertNotNull(measurement, run.out());
    return measurement;
  }

  private static double delaySamples(Run run) {
    return ((Number) measurement(run).get("delaySamples")).doubleValue();
  }

  private static List<String> codes(Run run) {
    return ((List<?>) run.json().get("findings"))
        .stream().map(finding -> (String) ((Map<?, ?>) finding).get("code")).toList();
  }
}
