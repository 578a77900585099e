package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class AlignmentTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  /** The mains heard 75 m away, and a tower there that is fed by cable; both leave one desk. */
  private static final String FIELD =
      """
      chain: Festival field
      sample-rate: 48000
      air-temperature: 20
      stages:
        desk: { ms: 2 }
        throw: { metres: 75 }
      paths:
        main:  { listener: house, stages: [desk, throw] }
        tower: { listener: house, stages: [desk] }
      mixes:
        field: [main, tower]
      """;

  private static Alignment aligned(Chain chain) {
    return delayed(chain, Map.of(), Optional.empty(), DeskStep.SAMPLE);
  }

  private static Map<String, MeasuredLoop> measured(Map<String, Latency> loops) {
    return loops.entrySet().stream()
        .collect(Collectors.toMap(Map.Entry::getKey, loop -> MeasuredLoop.of(loop.getValue())));
  }

  /** Where performers may be delayed too. */
  private static Alignment delayed(
      Chain chain, Map<String, Latency> loops, Optional<String> to, DeskStep step) {
    return Alignment.of(
        AlignRequest.of(chain, measured(loops), to, step)
            .delaying(Set.of(Listener.IN_EAR, Listener.WEDGE)));
  }

  private static AlignedPath path(Alignment alignment, int mix, String name) {
    return alignment.mixes().get(mix).paths().stream()
        .filter(path -> path.path().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static double add(Alignment alignment, String name) {
    return path(alignment, 0, name).add().samples();
  }

  /**
   * Common practice, no source: a tower at 75 m needs about 218 ms at 20 C and 212 ms at 38 C. By
   * ISO 9613-1, c = 343.2 sqrt(T / 293.15): 75 / 343.2 = 218.531 ms, and at 38 C c = 353.580 m/s
   * and 75 / c = 212.116 ms (derived).
   */
  @ParameterizedTest
  @CsvSource({"20, 218, 218.531", "38, 212, 212.116"})
  void towerWaitsForTheSoundOfTheMains(int celsius, double aboutMs, double exactMs) {
    Alignment field =
        aligned(Yaml.chain(FIELD.replace("temperature: 20", "temperature: " + celsius)));
    double ms = path(field, 0, "tower").add().ms();
    assertEquals(aboutMs, ms, 0.6);
    assertEquals(exactMs, ms, 0.011, "half a sample is 0.0104 ms");
    assertEquals(0, add(field, "main"));
    assertEquals("main", field.mixes().get(0).targets().get(0));
    assertFalse(field.passesLimit(), "a tower is meant to wait");
  }

  /** The same tower kept 8 ms behind: 384 samples more. */
  @Test
  void offsetKeepsAPathBehindTheOthers() {
    String behind = FIELD.replace("main, tower]", "main, { path: tower, offset-ms: 8 }]");
    double plain = add(aligned(Yaml.chain(FIELD)), "tower");
    assertEquals(plain + 384, add(aligned(Yaml.chain(behind)), "tower"));
  }

  /** Mains kept 300 ms behind the tower are the ones to wait: 300 - 218.531 = 81.469 ms. */
  @Test
  void offsetCountsWhenTheLatestIsSought() {
    String behind = FIELD.replace("[main, tower]", "[{ path: main, offset-ms: 300 }, tower]");
    Alignment field = aligned(Yaml.chain(behind));
    assertEquals(0, add(field, "tower"));
    assertEquals(81.469, path(field, 0, "main").add().ms(), 0.011);
  }

  /** By hand: house 559 samples, in-ear 71, so 488 to add: exact, and nothing is left. */
  @Test
  void allMeetTheLatest() {
    Alignment harbour = aligned(Harbour.chain());
    assertEquals(488, add(harbour, "vocal-in-ear"));
    assertEquals(0, add(harbour, "vocal-house"));
    assertEquals(0, harbour.mixes().get(0).widestGap().samples());
    assertEquals(OptionalDouble.empty(), harbour.mixes().get(0).firstNullHz());
    assertTrue(path(harbour, 0, "vocal-in-ear").passesLimit(), "11.6 ms in the ear");
    assertTrue(harbour.passesLimit());
  }

  /**
   * 488 samples are 10.1667 ms, so 10.2 by steps of 0.1 ms: 1.6 samples or 1/30 ms too late. Two
   * copies 1/30 ms apart cancel at 1/(2 t) = 15 kHz (Everest, Master Handbook of Acoustics).
   */
  @Test
  void roundingLeavesWhatItLeaves() {
    Alignment harbour =
        delayed(Harbour.chain(), Map.of(), Optional.empty(), DeskStep.parse("0.1ms"));
    AlignedPath inEar = path(harbour, 0, "vocal-in-ear");
    assertEquals(10.2, inEar.add().ms(), 1e-9);
    assertEquals(1.6, inEar.left().samples(), 1e-9);
    assertEquals(15_000, inEar.firstNullHz().orElseThrow(), 1e-6);
    assertEquals(15_000, harbour.mixes().get(0).firstNullHz().orElseThrow(), 1e-6);
  }

  /** Three paths that wait 0.4, 0.6 and 0 samples: the first two are left 0.8 apart. */
  @Test
  void widestGapIsThatOfTwoPathsRoundedApart() {
    String chain =
        """
        sample-rate: 48000
        stages: { a: { samples: 9.6 }, b: { samples: 9.4 }, c: { samples: 10 } }
        paths:
          a: { listener: house, input: x, stages: [a] }
          b: { listener: house, input: x, stages: [b] }
          c: { listener: house, input: x, stages: [c] }
        mixes: { all: [a, b, c] }
        """;
    AlignedMix mix = aligned(Yaml.chain(chain)).mixes().get(0);
    assertEquals(0.8, mix.widestGap().samples(), 1e-9);
    assertEquals(48_000 / 1.6, mix.firstNullHz().orElseThrow(), 1e-6);
  }

  @Test
  void nothingIsEverAdvanced() {
    LaterThanTargetException refused =
        assertThrows(
            LaterThanTargetException.class,
            () -> delayed(Harbour.chain(), Map.of(), Optional.of("vocal-in-ear"), DeskStep.SAMPLE));
    assertTrue(refused.getMessage().contains("vocal-house arrives 10.167 ms"), refused.toString());
    assertTrue(refused.hint().contains("vocal-house"), refused.hint());
  }

  @Test
  void namedPathIsMetWhereItIsAndTheLatestElsewhere() {
    Chain chain =
        Harbour.with(
            "front: [vocal-house, vocal-in-ear]",
            "front: [vocal-house, vocal-in-ear]\n  desk: [vocal-stream, vocal-in-ear]");
    Alignment harbour = delayed(chain, Map.of(), Optional.of("vocal-house"), DeskStep.SAMPLE);
    assertEquals("vocal-house", harbour.mixes().get(0).targets().get(0));
    assertEquals("vocal-stream", harbour.mixes().get(1).targets().get(0));
  }

  /** The in-ear mix wants 488 samples beside the house, and 188 - 71 = 117 beside the stream. */
  @Test
  void onePathInTwoMixesThatDisagreeIsAConflict() {
    Chain chain =
        Harbour.with(
            "front: [vocal-house, vocal-in-ear]",
            "front: [vocal-house, vocal-in-ear]\n  desk: [vocal-stream, vocal-in-ear]");
    List<Conflict> conflicts = aligned(chain).conflicts();
    Conflict conflict = conflicts.get(0);
    assertEquals(1, conflicts.size());
    assertEquals("vocal-in-ear", conflict.path());
    assertEquals("front", conflict.larger());
    assertEquals(488, conflict.add().samples());
    assertEquals("desk", conflict.smaller());
    assertEquals(117, conflict.otherAdd().samples());
    assertEquals(
        conflict.add().samples() - conflict.otherAdd().samples(), conflict.difference().samples());
  }

  @Test
  void onePathInTwoMixesThatAgreeIsNone() {
    Chain chain =
        Harbour.with(
            "front: [vocal-house, vocal-in-ear]",
            "front: [vocal-house, vocal-in-ear]\n  rear: [vocal-in-ear, vocal-house]");
    assertEquals(List.of(), aligned(chain).conflicts());
  }

  /** Measured by cable 600 samples instead of 559: the in-ear path waits 41 more. */
  @Test
  void measuredPathsReplacePredictedOnes() {
    Alignment harbour =
        delayed(
            Harbour.chain(),
            Map.of("vocal-house", new Latency(600, RATE)),
            Optional.empty(),
            DeskStep.SAMPLE);
    assertEquals(488 + 41, add(harbour, "vocal-in-ear"));
    assertEquals(DelaySource.MEASURED, path(harbour, 0, "vocal-house").delay().source());
    assertEquals(DelaySource.PREDICTED, path(harbour, 0, "vocal-in-ear").delay().source());
  }

  /** The main's loop by cable is its desk; its throw is predicted and added. */
  @Test
  void measuredDelayCoversTheLoopOnly() {
    Alignment field =
        delayed(
            Yaml.chain(FIELD),
            Map.of("main", new Latency(96 + 40, RATE)),
            Optional.empty(),
            DeskStep.SAMPLE);
    assertEquals(add(aligned(Yaml.chain(FIELD)), "tower") + 40, add(field, "tower"));
  }

  /** A desk that delays the others by the limiter's 240 samples leaves 488 - 240 to add. */
  @Test
  void compensatedStageNeedsNoDelay() {
    Chain chain = Harbour.with("reported-by: host", "reported-by: host, compensated: yes");
    assertEquals(248, add(aligned(chain), "vocal-in-ear"));
    assertEquals(List.of(), aligned(chain).mixes().get(0).unknown());
  }

  @Test
  void unknownCompensationIsSaidUntilBothPathsAreMeasured() {
    Chain chain = Harbour.with("reported-by: host", "reported-by: host, compensated: unknown");
    assertEquals(List.of("limiter"), aligned(chain).mixes().get(0).unknown());
    Map<String, Latency> loops =
        Map.of("vocal-house", new Latency(559, RATE), "vocal-in-ear", new Latency(311, RATE));
    Alignment measured = delayed(chain, loops, Optional.empty(), DeskStep.SAMPLE);
    assertEquals(List.of(), measured.mixes().get(0).unknown());
    assertEquals(248, add(measured, "vocal-in-ear"));
  }

  static IntStream seeds() {
    return IntStream.range(0, 200);
  }

  /** The same delay before all paths of a mix, at any step, moves no setting. */
  @ParameterizedTest
  @MethodSource("seeds")
  void delayingAllPathsAlikeChangesNoAlignment(int seed) {
    Random random = new Random(seed);
    String yaml = randomMix(random, 0);
    String later = yaml.replace("common: { samples: 0 }", "common: { samples: 12345.25 }");
    DeskStep step = DeskStep.parse(List.of("samples", "0.1ms", "0.05m").get(seed % 3));
    AlignedMix before = only(yaml, step);
    AlignedMix after = only(later, step);
    for (int i = 0; i < before.paths().size(); i++) {
      AlignedPath one = before.paths().get(i);
      AlignedPath other = after.paths().get(i);
      assertEquals(one.add().samples(), other.add().samples(), 1e-6, "seed " + seed);
      assertEquals(one.left().samples(), other.left().samples(), 1e-6, "seed " + seed);
    }
  }

  /** With the delays set, each path arrives within half a step of where it is meant to. */
  @ParameterizedTest
  @MethodSource("seeds")
  void pathsMeetToWithinHalfAStepAndNoneIsAdvanced(int seed) {
    AlignedMix mix = only(randomMix(new Random(seed), 20), DeskStep.SAMPLE);
    double meeting =
        mix.paths().stream()
            .filter(path -> path.path().equals(mix.targets().get(0)))
            .mapToDouble(AlignmentTest::arrives)
            .findFirst()
            .orElseThrow();
    for (AlignedPath path : mix.paths()) {
      assertTrue(path.add().samples() >= 0, "seed " + seed);
      assertEquals(meeting, arrives(path), 0.5 + 1e-6, "seed " + seed);
    }
  }

  private static double arrives(AlignedPath path) {
    return path.delay().delay().plus(path.add()).minus(path.offset()).samples();
  }

  private static AlignedMix only(String yaml, DeskStep step) {
    return delayed(Yaml.chain(yaml), Map.of(), Optional.empty(), step).mixes().get(0);
  }

  private static String randomMix(Random random, int largestOffsetMs) {
    StringBuilder stages = new StringBuilder("  common: { samples: 0 }\n");
    StringBuilder paths = new StringBuilder();
    StringBuilder mix = new StringBuilder();
    for (int i = 0; i < 2 + random.nextInt(6); i++) {
      stages.append("  s" + i + ": { samples: " + random.nextInt(500_000) / 64.0 + " }\n");
      paths.append("  p" + i + ": { listener: house, stages: [common, s" + i + "] }\n");
      mix.append("  - { path: p" + i);
      mix.append(", offset-ms: " + random.nextInt(largestOffsetMs + 1) + " }\n");
    }
    return "sample-rate: 48000\nstages:\n" + stages + "paths:\n" + paths + "mixes:\n m:\n" + mix;
  }
}
