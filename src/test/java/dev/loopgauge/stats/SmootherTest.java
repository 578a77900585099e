package dev.loopgauge.stats;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SmootherTest {
  private static double[] evenly(int count) {
    double[] ones = new double[count];
    Arrays.fill(ones, 1);
    return ones;
  }

  /** The normal equations, solved by Gauss's elimination: slow, but nothing of the method in it. */
  private static double[] direct(double[] values, double[] weights, double lambda) {
    int n = values.length;
    double[][] m = new double[n][n + 1];
    for (int i = 0; i < n; i++) {
      m[i][i] += weights[i];
      m[i][n] = weights[i] * values[i];
    }
    double[] stencil = {1, -2, 1};
    for (int start = 0; start + 2 < n; start++) {
      for (int a = 0; a < 3; a++) {
        for (int b = 0; b < 3; b++) {
          m[start + a][start + b] += lambda * stencil[a] * stencil[b];
        }
      }
    }
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        double factor = m[j][i] / m[i][i];
        for (int k = i; k <= n; k++) {
          m[j][k] -= factor * m[i][k];
        }
      }
    }
    double[] x = new double[n];
    for (int i = n - 1; i >= 0; i--) {
      x[i] = m[i][n];
      for (int k = i + 1; k < n; k++) {
        x[i] -= m[i][k] * x[k];
      }
      x[i] /= m[i][i];
    }
    return x;
  }

  @Test
  void minimisesSquaresPlusRoughness() {
    double[] values = {3, 1, 4, 1, 5, 9, 2, 6};
    double[] variances = {1, 2, 1, 0.5, 1, 3, 1, 1};
    Smoother.Curve curve = Smoother.ofParameters(values, variances, 4);
    double[] weights = Arrays.stream(variances).map(v -> 1 / v).toArray();
    double mean = Arrays.stream(weights).sum() / weights.length;
    boolean found = false;
    for (int exponent = -12; exponent <= 24; exponent++) {
      double[] direct = direct(values, weights, mean * Math.pow(10, exponent / 2.0));
      found |= Math.abs(direct[3] - curve.values()[3]) < 1e-9;
    }
    assertTrue(found, Arrays.toString(curve.values()));
    assertTrue(curve.parameters() <= 4, "has " + curve.parameters());
  }

  @Test
  void countsTheParametersOfItsCurve() {
    double[] variances = {1, 2, 1, 0.5, 1, 3, 1, 1};
    double trace = 0;
    Smoother.Curve curve = null;
    for (int i = 0; i < 8; i++) {
      double[] unit = new double[8];
      unit[i] = 1;
      curve = Smoother.ofParameters(unit, variances, 4);
      trace += curve.values()[i];
    }
    assertEquals(trace, curve.parameters(), 1e-9);
  }

  @Test
  void keepsAStraightLineAsItIs() {
    double[] line = {1, 2, 3, 4, 5, 6};
    assertArrayEquals(line, Smoother.through(line, evenly(6)).values(), 1e-6);
  }

  @Test
  void takesMoreOfTheNoiseAwayTheStraighterWhatIsBelow() {
    SplittableRandom random = new SplittableRandom(7);
    double[] noisy = new double[100];
    Arrays.setAll(noisy, i -> 0.1 * i + random.nextGaussian());
    double[] smooth = Smoother.through(noisy, evenly(100)).values();
    double squares = 0;
    for (int i = 0; i < 100; i++) {
      squares += Math.pow(smooth[i] - 0.1 * i, 2);
    }
    assertTrue(squares / 100 < 0.1, "leaves a variance of " + squares / 100);
  }

  @Test
  void leavesOutWhatIsInfinitelyUncertain() {
    double[] values = {0, 1, 1000, 3, 4};
    double[] variances = {1, 1, Double.POSITIVE_INFINITY, 1, 1};
    assertEquals(2, Smoother.through(values, variances).values()[2], 1e-3);
  }

  @Test
  void wantsFourValues() {
    assertThrows(IllegalArgumentException.class, () -> Smoother.through(new double[3], evenly(3)));
  }
}
