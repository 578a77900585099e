package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

class ConjugateGradientsTest {
  private static final double[][] A = {{4, 1, 0}, {1, 3, -1}, {0, -1, 2}};
  private static final double[] X = {1, -2, 3};

  private static double[] product(double[] v) {
    double[] product = new double[v.length];
    for (int i = 0; i < v.length; i++) {
      product[i] = ConjugateGradients.dot(A[i], v);
    }
    return product;
  }

  private static double[] solved(UnaryOperator<double[]> roughly, double most) {
    return new ConjugateGradients(ConjugateGradientsTest::product, roughly).solve(product(X), most);
  }

  @Test
  void solvesSystemWithAndWithoutRoughInverse() {
    assertArrayEquals(X, solved(double[]::clone, Double.POSITIVE_INFINITY), 1e-9);
    assertArrayEquals(
        X,
        solved(v -> new double[] {v[0] / 4, v[1] / 3, v[2] / 2}, Double.POSITIVE_INFINITY),
        1e-9);
  }

  @Test
  void stopsWhereTheProductWithTheRightHandSideIsEnough() {
    double[] early = solved(double[]::clone, 1);
    double reached = ConjugateGradients.dot(product(X), early);
    assertTrue(reached >= 1 && reached < ConjugateGradients.dot(product(X), X) - 1e-6);
  }
}
