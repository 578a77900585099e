package dev.loopgauge.estimate.spectrum;

import java.util.function.UnaryOperator;

/**
 * Solves A x = b for a symmetric positive definite A of which only the product with a vector is
 * known (M. R. Hestenes, E. Stiefel, "Methods of conjugate gradients for solving linear systems",
 * 1952, with preconditioning; from memory).
 */
public final class ConjugateGradients {
  private static final int MOST_STEPS = 100;

  /** What is left of the right-hand side at the end, as a share of its squared norm. */
  private static final double CLOSE_ENOUGH = 1e-6;

  private final UnaryOperator<double[]> product;
  private final UnaryOperator<double[]> roughly;

  /**
   * A system.
   *
   * @param product A times a vector
   * @param roughly about A's inverse times a vector, symmetric and positive definite too
   */
  public ConjugateGradients(UnaryOperator<double[]> product, UnaryOperator<double[]> roughly) {
    this.product = product;
    this.roughly = roughly;
  }

  /**
   * The solution.
   *
   * @param most where b times x, which rises from step to step, needs no further step
   */
  public double[] solve(double[] b, double most) {
    double[] x = new double[b.length];
    double[] left = b.clone();
    double[] preconditioned = roughly.apply(left);
    double[] direction = preconditioned.clone();
    double norm = dot(left, preconditioned);
    double enough = CLOSE_ENOUGH * norm;
    for (int step = 0; step < MOST_STEPS && norm > enough && dot(b, x) < most; step++) {
      double[] along = product.apply(direction);
      double factor = norm / dot(direction, along);
      add(factor, direction, x);
      add(-factor, along, left);
      preconditioned = roughly.apply(left);
      double next = dot(left, preconditioned);
      for (int i = 0; i < direction.length; i++) {
        direction[i] = preconditioned[i] + next / norm * direction[i];
      }
      norm = next;
    }
    return x;
  }

  private static void add(double factor, double[] x, double[] sum) {
    for (int i = 0; i < sum.length; i++) {
      sum[i] += factor * x[i];
    }
  }

  /** The sum of the products of two vectors. */
  public static double dot(double[] x, double[] y) {
    double sum = 0;
    for (int i = 0; i < x.length; i++) {
      sum += x[i] * y[i];
    }
    return sum;
  }
}
