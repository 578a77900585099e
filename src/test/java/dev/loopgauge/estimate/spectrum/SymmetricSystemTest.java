package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SymmetricSystemTest {
  @Test
  void solvesWhatItWasGiven() {
    double[][] matrix = {{4, 1, -2}, {1, 3, 0.5}, {-2, 0.5, 5}};
    double[] x =
        new SymmetricSystem(matrix).solve(new double[] {4 - 2 + 6, 1 - 6 - 1.5, -2 - 1 - 15});
    assertArrayEquals(new double[] {1, -2, -3}, x, 1e-7);
  }

  @Test
  void unknownsThatCannotBeToldApartComeOutLargeButFinite() {
    double[] x = new SymmetricSystem(new double[][] {{1, 1}, {1, 1}}).solve(new double[] {1, 0});
    assertTrue(Double.isFinite(x[0]) && Math.abs(x[0]) > 1e6, x[0] + " and " + x[1]);
  }
}
