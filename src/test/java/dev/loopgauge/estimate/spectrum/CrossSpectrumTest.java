package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.estimate.DelayTrial;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class CrossSpectrumTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  private static Signal noise(int length, long seed) {
    return Signal.of(RATE, new SplittableRandom(seed).doubles(length, -1, 1).toArray());
  }

  private static double directSum(Signal x, Signal y, int lag) {
    double sum = 0;
    for (int n = 0; n < x.length(); n++) {
      if (n + lag >= 0 && n + lag < y.length()) {
        sum += x.at(n) * y.at(n + lag);
      }
    }
    return sum;
  }

  private static CrossSpectrum correlate(Signal x, Signal y, BlockPlan plan) {
    return new Correlator(plan, new RealFft(plan.transform()), 0)
        .add(new Reading(x, y), 0, plan.blocks(x.length()));
  }

  private static void assertIsDirectSum(BlockPlan plan) {
    Signal x = noise(3000, 1);
    Signal y = noise(3700, 2);
    double[] lags = correlate(x, y, plan).wholeLags();
    for (int lag = -plan.maxLag(); lag <= plan.maxLag(); lag++) {
      assertEquals(directSum(x, y, lag), lags[lag + plan.maxLag()], 1e-9, "lag " + lag);
    }
  }

  @Test
  void isTheDirectSumInOneTransform() {
    assertIsDirectSum(BlockPlan.of(3000, 500, 256));
  }

  @Test
  void isTheDirectSumInManyTransforms() {
    assertIsDirectSum(new BlockPlan(2048, 1048, 500));
  }

  @Test
  void evaluatesItselfAtAnyLagWithItsDerivatives() {
    Signal x = DelayTrial.asConvertersPass(noise(3000, 3));
    CrossSpectrum cross = correlate(x, noise(3000, 4), BlockPlan.of(x.length(), 50, 32));
    double step = 1e-4;
    for (double lag : new double[] {-50, -3.7, 0, 0.25, 49.9}) {
      CrossSpectrum.Point point = cross.at(lag);
      double before = cross.at(lag - step).value();
      double after = cross.at(lag + step).value();
      assertEquals((after - before) / (2 * step), point.slope(), 1e-4, "slope at " + lag);
      assertEquals(
          (after - 2 * point.value() + before) / (step * step),
          point.curvature(),
          1e-2,
          "curvature at " + lag);
      assertEquals(cross.lagsFrom(lag, 1)[0], point.value(), 0.5, "value at " + lag);
    }
  }
}
