package dev.loopgauge.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class RobustScatterTest {
  private static double fromBends(int count, DoubleUnaryOperator level) {
    SplittableRandom random = new SplittableRandom(5);
    double sum = 0;
    for (int trial = 0; trial < 2000; trial++) {
      double[] times = new double[count];
      double[] values = new double[count];
      Arrays.setAll(times, i -> 2 * i + (i > 5 ? 7 : 0));
      Arrays.setAll(values, i -> level.applyAsDouble(times[i]) + random.nextGaussian());
      sum += RobustScatter.fromBends(times, values);
    }
    return sum / 2000;
  }

  @Test
  void aSlopeThatBeginsAndAStepHardlyAddToScatter() {
    assertEquals(1, fromBends(24, t -> 0), 0.05);
    assertEquals(1, fromBends(24, t -> 50 * t), 0.05);
    assertEquals(1, fromBends(24, t -> t < 25 ? 0 : 50 * (t - 25)), 0.2);
    assertEquals(1, fromBends(24, t -> t < 25 ? 0 : 500), 0.2);
  }
}
