package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.Segments;
import dev.loopgauge.estimate.ShowSound;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class KeptTransformsTest {
  private static final SampleRate RATE = new SampleRate(8000);
  private static final int LENGTH = RATE.samplesIn(30);

  /** To the last bit, the first return that is read and those after it. */
  @Test
  void changeNothingInWhatIsMeasured() {
    SplittableRandom random = new SplittableRandom(4);
    Signal reference = ShowSound.applause(RATE, 30, random);
    DelayEstimator estimator = new DelayEstimator(0.5);
    Segments kept = Segments.forMany(reference, 0.5);
    for (int delay : new int[] {3, 200, -150}) {
      Signal ret = reference.slice(-delay, LENGTH - delay);
      Measurement once = measured(estimator.estimate(Segments.of(reference, 0.5), ret));
      Measurement again = measured(estimator.estimate(kept, ret));
      assertEquals(once, again);
      assertEquals(delay, again.delay().samples(), 0.01);
    }
  }

  private static Measurement measured(Estimate estimate) {
    return assertInstanceOf(Estimate.Found.class, estimate, estimate::toString).measurement();
  }
}
