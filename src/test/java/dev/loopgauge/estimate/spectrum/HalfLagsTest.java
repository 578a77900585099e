package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.estimate.DelayTrial;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HalfLagsTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int DIFFERENCES = 3;

  /** Sound that lies near half the rate: noise, each sample less the one before, and again. */
  private static Signal high(SplittableRandom random) {
    double[] high = random.doubles(48_000, -0.1, 0.1).toArray();
    for (int times = 0; times < DIFFERENCES; times++) {
      for (int i = high.length - 1; i > 0; i--) {
        high[i] -= high[i - 1];
      }
    }
    return DelayTrial.asConvertersPass(Signal.of(RATE, high));
  }

  @ParameterizedTest
  @ValueSource(doubles = {97, 97.25, 97.5, 97.75})
  void findsPeaksBetweenWholeLags(double delay) {
    SplittableRandom random = new SplittableRandom(7);
    DelayTrial trial = new DelayTrial(high(random));
    Reading reading = trial.reading(delay, 0.5, trial.noise(20, 0.5), random);
    FittedArrival strongest = Spectra.of(List.of(reading), 0.1).strongest();
    assertEquals(delay, strongest.lag(), 0.02);
    assertEquals(0.5, strongest.gain(), 0.03);
  }
}
