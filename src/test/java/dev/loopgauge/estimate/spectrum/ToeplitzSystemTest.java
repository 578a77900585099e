package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ToeplitzSystemTest {
  @Test
  void solvesWhatItWasGiven() {
    SplittableRandom random = new SplittableRandom(11);
    int n = 60;
    double[] r = new double[n];
    double[] truth = new double[n];
    for (int i = 0; i < n; i++) {
      r[i] = Math.pow(0.9, i);
      truth[i] = random.nextDouble(-1, 1);
    }
    double[] b = new double[n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        b[i] += r[Math.abs(i - j)] * truth[j];
      }
    }
    double[] x = ToeplitzSystem.solve(r, b);
    for (int i = 0; i < n; i++) {
      assertEquals(truth[i], x[i], 1e-10, "unknown " + i);
    }
  }
}
