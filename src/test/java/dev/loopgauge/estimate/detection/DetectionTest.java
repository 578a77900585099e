package dev.loopgauge.estimate.detection;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DetectionTest {
  private static final Signal SWEEP = StimulusKind.SWEEP.of(0.1).render(new SampleRate(48_000));
  private static final int DELAY = 200;

  /** Noise comes to 5.7 deviations at one of 4,800 lags once in 10,000 times; 8 are a delay. */
  @ParameterizedTest
  @CsvSource({"0, 0, 0", "3, 0, 0", "7.2, 3, 10"})
  void tellsWhatIsTooFaintFromNoise(double deviations, int least, int most) {
    SplittableRandom random = new SplittableRandom(21);
    double gain = deviations / (SWEEP.rms() * Math.sqrt(SWEEP.length()));
    int told = 0;
    for (int trial = 0; trial < 10; trial++) {
      double[] back = SWEEP.slice(-DELAY, SWEEP.length() + DELAY).times(gain).toArray();
      for (int i = 0; i < back.length; i++) {
        back[i] = 0.01 * (back[i] + random.nextGaussian());
      }
      Reading reading = new Reading(SWEEP, Signal.of(SWEEP.rate(), back));
      told += isTooFaint(new DelayEstimator(0.05).estimate(List.of(reading))) ? 1 : 0;
    }
    assertTrue(told >= least && told <= most, "told " + told);
  }

  private static boolean isTooFaint(Estimate estimate) {
    return estimate.findings().stream().anyMatch(f -> f.code() == FindingCode.WEAK_RETURN);
  }
}
