package dev.loopgauge.estimate.measurand;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.filter.Designs;
import dev.loopgauge.signal.filter.Filter;
import dev.loopgauge.signal.filter.LowPass;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeardBandTest {
  private static final int LENGTH = Designs.RATE.hertz();
  private static final int DELAY = 310;

  /** A sound of which 72 dB less is left with each octave above 1 kHz. */
  private static double[] dull(SplittableRandom random) {
    double[] sound = new double[LENGTH];
    Arrays.setAll(sound, i -> 0.1 * random.nextGaussian());
    Filter filter = new LowPass(1000, 4).at(Designs.RATE);
    return filter.on(filter.on(filter.on(sound)));
  }

  /**
   * The sound begins and ends at once, which spreads over all of a short block's spectrum. That was
   * once taken for sound: of such a path at 10 dB up to 18 kHz were "heard", and the delay was told
   * within 80 samples.
   */
  @ParameterizedTest
  @CsvSource({"6, 30", "5, 10", "6, 10"})
  void endsWhereTheReferenceHoldsNoMore(long seed, double decibels) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] sent = dull(random);
    double energy = Arrays.stream(sent).map(x -> x * x).sum();
    double noise = Math.sqrt(energy / LENGTH) * Math.pow(10, -decibels / 20);
    double[] back = new double[LENGTH + 12_000];
    System.arraycopy(sent, 0, back, DELAY, LENGTH);
    for (int i = 0; i < back.length; i++) {
      back[i] += noise * random.nextGaussian();
    }
    Estimate estimate =
        new DelayEstimator(0.1)
            .estimate(Signal.of(Designs.RATE, sent), Signal.of(Designs.RATE, back));
    Measurement measured = ((Estimate.Found) estimate).measurement();
    assertTrue(measured.passband().orElseThrow().toHz() < 4000, measured.toString());
    assertEquals(DELAY, measured.delay().samples(), measured.uncertaintySamples());
    assertTrue(measured.uncertaintySamples() < 0.1, measured.toString());
  }
}
