package dev.loopgauge.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ComparisonTest {
  /** Loop: 12 + 2 * 64 + 60 = 200 samples, tolerance 3; the air is no part of it. */
  private static final String CHAIN =
      """
      chain: Field stage
      sample-rate: 48000
      block-size: 64
      stages:
        input: { samples: 12, tolerance-samples: 1 }
        host: { blocks: 2 }
        fixed: { samples: 60, tolerance-samples: 2 }
        throw: { metres: 2 }
      paths:
        vocal: { listener: wedge, stages: [input, host, fixed, throw] }
        dry: { listener: wedge, stages: [input] }
      """;

  private static Chain chain() {
    return Rigs.parsed(CHAIN);
  }

  private static Measurement measured(double samples, double uncertainty, int hertz) {
    return Rigs.measured(samples, uncertainty, new SampleRate(hertz));
  }

  private static Comparison compare(Measurement measurement, String path) {
    return Comparison.of(measurement, chain(), chain().path(path), 1);
  }

  /** The limit is 3 of tolerance and 1 of allowance: 4 samples either side of 200. */
  @ParameterizedTest
  @CsvSource({
    "200.0, 0.1, WITHIN",
    "203.8, 0.1, WITHIN",
    "196.2, 0.1, WITHIN",
    "203.95, 0.1, UNDECIDED",
    "204.05, 0.1, UNDECIDED",
    "204.2, 0.1, LATE",
    "195.8, 0.1, EARLY",
    "200.0, 5, UNDECIDED",
    "328.0, 0.1, LATE"
  })
  void countsUncertaintyToleranceAndAllowance(double samples, double uncertainty, Verdict verdict) {
    assertEquals(verdict, compare(measured(samples, uncertainty, 48_000), "vocal").verdict());
  }

  @Test
  void neverDecidesOnWhatHoldsTheCardsOwnDelay() {
    Measurement measurement = measured(200, 0.1, 48_000).withMethod(Method.UNCALIBRATED);
    assertEquals(Verdict.UNDECIDED, compare(measurement, "vocal").verdict());
  }

  @Test
  void namesTheBlockSizeThatWouldExplainIt() {
    Comparison comparison = compare(measured(328.02, 0.1, 48_000), "vocal");
    assertEquals(OptionalInt.of(2), comparison.wholeBlocks());
    Explanation first = comparison.explanations().get(0);
    assertEquals("block-size", first.cause());
    assertTrue(first.text().contains("128 samples, not 64"), first.text());
    assertEquals(328, first.predictedSamples(), 1e-9);
    assertEquals(0.02, first.residualSamples(), 1e-9);
  }

  @Test
  void blamesNoBlockSizeWhereThePathHasNoBlocks() {
    List<Explanation> explanations = compare(measured(140, 0.1, 48_000), "dry").explanations();
    assertEquals(List.of("none-fits"), explanations.stream().map(Explanation::cause).toList());
  }

  @Test
  void comparesTimesWhenTheCardRunsAtAnotherRateThanTheRig() {
    Comparison comparison = compare(measured(400, 0.1, 96_000), "vocal");
    assertEquals(400, comparison.predicted().samples(), 1e-9);
    assertEquals(6, comparison.toleranceSamples(), 1e-9);
    assertEquals(Verdict.WITHIN, comparison.verdict());
  }

  @Test
  void refusesNegativeAllowance() {
    Measurement measurement = measured(200, 0.1, 48_000);
    assertThrows(
        IllegalArgumentException.class,
        () -> Comparison.of(measurement, chain(), chain().path("vocal"), -1));
  }
}
