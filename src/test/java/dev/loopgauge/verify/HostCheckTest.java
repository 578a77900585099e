package dev.loopgauge.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HostCheckTest {
  private static Measurement measured(double samples) {
    return Rigs.measured(samples, 0.05, Rigs.RATE);
  }

  private static HostCheck check(double reported, double measured) {
    return HostCheck.of(measured(measured), ReportedDelay.ofSamples(reported));
  }

  /** Half a sample of rounding and 0.05 of uncertainty are let pass. */
  @ParameterizedTest
  @CsvSource({
    "240, 240.3, AGREES, true",
    "0, 0.02, NO_DELAY, true",
    "0, -0.4, NO_DELAY, true",
    "0, 240, NOT_REPORTED, false",
    "240, 0.02, TAKEN_BACK, false",
    "240, 480.1, TWICE, false",
    "240, -240, TAKEN_BACK_IN_VAIN, false",
    "64, 240, MORE_THAN_REPORTED, false",
    "240, 64, LESS_THAN_REPORTED, false",
    "240, 241, MORE_THAN_REPORTED, false",
    "0, -12, LESS_THAN_REPORTED, false"
  })
  void tellsHostsApart(double reported, double measured, HostAnswer answer, boolean agrees) {
    HostCheck check = check(reported, measured);
    assertEquals(answer, check.answer());
    assertEquals(Optional.of(agrees), check.agrees());
    assertEquals(!agrees, check.fails());
    assertEquals(measured - reported, check.differenceSamples().orElseThrow(), 1e-9);
  }

  @Test
  void whatAPluginAddsIsTheDifferenceAndUncertaintiesAddAsSquares() {
    HostCheck check =
        HostCheck.ofDifference(
            Rigs.measured(900, 0.3, Rigs.RATE),
            Rigs.measured(660, 0.4, Rigs.RATE),
            Optional.of(ReportedDelay.ofSamples(240)));
    assertEquals(240, check.measuredSamples(), 1e-9);
    assertEquals(0.5, check.uncertaintySamples(), 1e-9);
    assertEquals(HostAnswer.AGREES, check.answer());
  }

  @Test
  void withoutAReportThereIsNothingToAgreeWith() {
    HostCheck check = HostCheck.ofDifference(measured(900), measured(660), Optional.empty());
    assertEquals(Optional.empty(), check.agrees());
    assertEquals(Optional.empty(), check.differenceSamples());
    assertFalse(check.fails());
  }

  @Test
  void theCardsOwnDelayConfirmsNothing() {
    HostCheck check =
        HostCheck.of(measured(240).withMethod(Method.UNCALIBRATED), ReportedDelay.ofSamples(240));
    assertEquals(HostAnswer.UNDECIDED, check.answer());
    assertEquals(Optional.empty(), check.agrees());
    assertTrue(check.fails());
  }

  @Test
  void capturesAtDifferentRatesHaveNoDifference() {
    Measurement other = Rigs.measured(660, 0.05, new SampleRate(44_100));
    assertThrows(
        IllegalArgumentException.class,
        () -> HostCheck.ofDifference(measured(900), other, Optional.empty()));
  }

  /** 5.9 ms may be 5.85 to 5.95 ms: 280.8 to 285.6 samples at 48 kHz. */
  @ParameterizedTest
  @CsvSource({
    "5.9, 283.2, 2.4",
    "5.90, 283.2, 0.5",
    "5, 240, 24",
    "5.000, 240, 0.5",
    "1E+1, 480, 24"
  })
  void milliSecondsAreAsGoodAsTheirDigits(BigDecimal ms, double samples, double rounding) {
    ReportedDelay reported = ReportedDelay.ofMs(ms, Rigs.RATE);
    assertEquals(samples, reported.samples(), 1e-9);
    assertEquals(rounding, reported.roundingSamples(), 1e-9);
  }

  @Test
  void roundedMilliSecondsAgreeWithinTheirRounding() {
    ReportedDelay reported = ReportedDelay.ofMs(new BigDecimal("5.9"), Rigs.RATE);
    assertEquals(HostAnswer.AGREES, HostCheck.of(measured(281), reported).answer());
    assertEquals(HostAnswer.LESS_THAN_REPORTED, HostCheck.of(measured(280), reported).answer());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesReportsThatCannotBe(double samples) {
    assertThrows(IllegalArgumentException.class, () -> ReportedDelay.ofSamples(samples));
  }
}
