package dev.loopgauge.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.signal.Latency;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A path whose clocks are not locked says when its listener's limit is passed. */
class TowardsLimitTest {
  /** The loop is 96 samples, 2 ms; beyond it 343.2 / 200 m of air at 20 degrees C, 5 ms. */
  private static final Chain CHAIN =
      Rigs.parsed(
          """
          chain: Quay Street Theatre
          sample-rate: 48000
          block-size: 64
          stages:
            desk: { samples: 96 }
            throw: { metres: 1.716 }
          paths:
            vocal: { listener: wedge, stages: [desk, throw] }
            mix: { listener: stream, stages: [desk] }
          """);

  private static Optional<TowardsLimit> limit(double samples, double ppm, String path) {
    return TowardsLimit.of(new Latency(samples, Rigs.RATE), ppm, CHAIN, CHAIN.path(path));
  }

  /** The wedge's limit is 15 ms; 3 ms measured and 5 of air leave 7: 140,000 s at 0.05 ms/ks. */
  @ParameterizedTest
  @CsvSource({
    "144, 50, 140, in about 2 min",
    "144, 1000, 7, in about 7 s",
    "144, 1, 7000, in about 117 min",
    "144, 0.5, 14000, in about 4 hours",
    "144, 0.02, 350000, in about 4 days",
    "528, 50, 0, is past its 15 ms limit already"
  })
  void tellsTheTimeThatIsLeft(double samples, double ppm, double seconds, String words) {
    TowardsLimit limit = limit(samples, ppm, "vocal").orElseThrow();
    assertEquals(15, limit.limitMs());
    assertEquals(samples / 48 + 5, limit.delayMs(), 1e-3);
    assertEquals(seconds, limit.seconds(), 1e-3 * seconds);
    assertTrue(limit.text().contains(words), limit::text);
  }

  @Test
  void aPathThatGetsEarlierPassesNoLimit() {
    assertEquals(Optional.empty(), limit(144, -50, "vocal"));
  }

  @Test
  void aStreamHasNoLimitOnDelayAlone() {
    assertEquals(Optional.empty(), limit(144, 50, "mix"));
  }

  private static Comparison compared(Measurement measured, Finding... findings) {
    Estimate.Found found = new Estimate.Found(measured, List.of(findings));
    return Comparison.of(found, CHAIN, CHAIN.path("vocal"), 1);
  }

  private static Measurement drifting(double samples, double ppm) {
    Measurement m = Rigs.measured(samples, 0.1, Rigs.RATE);
    return new Measurement(
        m.delay(),
        m.uncertaintySamples(),
        Optional.empty(),
        Optional.empty(),
        m.polarity(),
        m.levelDb(),
        m.levelUncertaintyDb(),
        m.signalToNoiseDb(),
        m.method(),
        m.repeats(),
        Optional.of(new ClockDrift(ppm, 0.1)),
        m.arrivals(),
        m.lostSound(),
        m.bands(),
        m.response(),
        m.ambiguous());
  }

  private static final Finding NOT_LOCKED =
      new Finding(FindingCode.CLOCKS_NOT_LOCKED, false, "they drift", "lock them");

  @Test
  void putsADifferenceDownToADriftThatSoonMakesItUp() {
    Comparison comparison = compared(drifting(144, 20), NOT_LOCKED);
    assertEquals(Verdict.LATE, comparison.verdict());
    Explanation only = comparison.explanations().get(0);
    assertEquals(1, comparison.explanations().size());
    assertEquals("clocks-not-locked", only.cause());
    assertTrue(only.text().contains("in 50 s"), only::text);
    assertEquals(350, comparison.towardsLimit().orElseThrow().seconds(), 1);
  }

  @Test
  void aDriftTooSlowToBeWhyLeavesTheOtherCauses() {
    Comparison comparison = compared(drifting(144, 0.5), NOT_LOCKED);
    assertTrue(
        comparison.explanations().stream().noneMatch(e -> e.cause().equals("clocks-not-locked")));
    assertTrue(comparison.towardsLimit().isPresent());
  }

  @Test
  void clocksThatAreLockedPassNoLimit() {
    assertEquals(Optional.empty(), compared(drifting(144, 0.01)).towardsLimit());
  }

  @Test
  void aNumberThatHoldsTheCardsOwnDelayPassesNoLimit() {
    Measurement measured = drifting(144, 20).withMethod(Method.UNCALIBRATED);
    assertEquals(Optional.empty(), compared(measured, NOT_LOCKED).towardsLimit());
  }

  private static List<String> causes(double samples, double uncertainty, double ppm) {
    Measurement m = drifting(samples, ppm);
    Measurement sure = Rigs.measured(samples, uncertainty, Rigs.RATE);
    Measurement measured =
        new Measurement(
            sure.delay(),
            sure.uncertaintySamples(),
            Optional.empty(),
            Optional.empty(),
            m.polarity(),
            m.levelDb(),
            m.levelUncertaintyDb(),
            m.signalToNoiseDb(),
            m.method(),
            m.repeats(),
            m.clockDrift(),
            m.arrivals(),
            m.lostSound(),
            m.bands(),
            m.response(),
            m.ambiguous());
    Estimate.Found found = new Estimate.Found(measured, List.of(NOT_LOCKED));
    return Comparison.of(found, CHAIN, CHAIN.path("vocal"), 0).explanations().stream()
        .map(Explanation::cause)
        .toList();
  }

  /** 48 samples are 1 ms: 600 s at 1.667 ppm. */
  @ParameterizedTest
  @CsvSource({
    "144, 1.68, clocks-not-locked",
    "144, 1.65, none-fits",
    "144, -20, none-fits",
    "60, -20, clocks-not-locked",
    "60, 20, none-fits"
  })
  void aDriftIsWhyOnlyWithTheRightSignAndWithinTenMinutes(
      double samples, double ppm, String cause) {
    assertEquals(List.of(cause), causes(samples, 0.1, ppm));
  }

  /**
   * 3.9 ppm reach 112 samples in 10 minutes. Spread evenly over them the drift is as likely as
   * ln(112 / (5 sqrt(2 pi))) = 2.19 below a cause without cost that fits exactly. That 'desk' comes
   * twice costs 1.5, and its 96 samples leave 5 or 8 of a standard uncertainty of 5: 0.5 or 1.28.
   */
  @ParameterizedTest
  @CsvSource({"197, stage-twice, clocks-not-locked", "200, clocks-not-locked, stage-twice"})
  void aDriftIsRankedByHowWellTheOthersExplain(double samples, String first, String second) {
    assertEquals(List.of(first, second), causes(samples, 10, 3.9));
  }
}
