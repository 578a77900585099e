package dev.loopgauge.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A step in a soak, on either side of where it begins. */
class SoakStepTest {
  private static Estimate.Found found(double samples, double uncertainty) {
    Measurement measurement =
        new Measurement(
            new Latency(samples, new SampleRate(48_000)),
            uncertainty,
            Optional.empty(),
            Optional.empty(),
            Polarity.NORMAL,
            0,
            0.1,
            60,
            Method.REFERENCED,
            1,
            Optional.empty(),
            List.of(),
            List.of(),
            List.of(),
            Optional.empty(),
            false);
    return new Estimate.Found(measurement, List.of());
  }

  /** Twice the expanded uncertainty of a difference of two: 2 sqrt 2 of 0.1 is 0.283. */
  @ParameterizedTest
  @CsvSource({
    "100.09, 0.001, 0",
    "100.11, 0.001, 1",
    "99.89, 0.001, 1",
    "100.28, 0.1, 0",
    "99.71, 0.1, 1"
  })
  void aStepIsMoreThanATenthOfASampleAndThanItsUncertainty(
      double then, double uncertainty, int steps) {
    Soak soak = new Soak(1);
    soak.add(found(100, uncertainty));
    soak.add(found(then, uncertainty));
    assertEquals(steps, soak.count(Soak.Kind.STEP));
  }
}
