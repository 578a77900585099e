package dev.loopgauge.estimate.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SweepMomentsTest {
  private static final int LENGTH = 403;
  private static final double SIDE = 150;

  /** On blocks' edges and off them, within one block, and with the instant at either end. */
  @ParameterizedTest
  @CsvSource({"0, 150, 150", "3, 153, 153", "8, 16, 0", "9, 14, 14", "253, 403, 253", "7, 9, 8"})
  void theyAreTheSumsThatTheirNamesSay(int from, int to, int at) {
    double[] x = noise(1);
    double[] q = noise(2);
    double[] y = noise(3);
    double[] sums = new SweepMoments(x, q, y, SIDE).over(from, to, at);
    for (int power = 0; power < 5; power++) {
      assertSum(x, x, from, to, at, power, sums[SweepMoments.SENT + power]);
      assertSum(x, q, from, to, at, power, sums[SweepMoments.BOTH + power]);
      assertSum(q, q, from, to, at, power, sums[SweepMoments.QUADRATURE + power]);
    }
    for (int power = 0; power < 3; power++) {
      assertSum(x, y, from, to, at, power, sums[SweepMoments.SENT_RETURN + power]);
      assertSum(q, y, from, to, at, power, sums[SweepMoments.QUADRATURE_RETURN + power]);
    }
    assertSum(y, y, from, to, at, 0, sums[SweepMoments.RETURN]);
  }

  private static void assertSum(
      double[] one, double[] other, int from, int to, int at, int power, double actual) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += one[i] * other[i] * Math.pow((i - at) / SIDE, power);
    }
    assertEquals(sum, actual, 1e-11);
  }

  private static double[] noise(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] noise = new double[LENGTH];
    for (int i = 0; i < LENGTH; i++) {
      noise[i] = random.nextGaussian();
    }
    return noise;
  }
}
