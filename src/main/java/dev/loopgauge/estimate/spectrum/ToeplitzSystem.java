package dev.loopgauge.estimate.spectrum;

/**
 * Solves symmetric Toeplitz systems, as least-squares fits of a filter lead to, by Levinson's
 * recursion in n^2 steps (G. H. Golub, C. F. Van Loan, "Matrix Computations", algorithm 4.7.2, from
 * memory).
 */
public final class ToeplitzSystem {
  private ToeplitzSystem() {}

  /**
   * The x with sum over j of r[|i - j|] x[j] = b[i] for each i.
   *
   * @param r the first row; r[0] above 0 and the matrix positive definite
   * @param b the right-hand side, as long as {@code r}
   */
  public static double[] solve(double[] r, double[] b) {
    int n = b.length;
    double[] x = new double[n];
    double[] predictor = new double[n];
    double[] previous = new double[n];
    double error = r[0];
    x[0] = b[0] / r[0];
    for (int k = 1; k < n; k++) {
      double reflection = -(r[k] + backwards(predictor, r, k)) / error;
      System.arraycopy(predictor, 0, previous, 0, k);
      addBackwards(reflection, previous, predictor, k);
      predictor[k] = reflection;
      error *= 1 - reflection * reflection;
      double step = (b[k] - r[k] * x[0] - backwards(x, r, k)) / error;
      x[0] += step * predictor[k];
      addBackwards(step, predictor, x, k);
      x[k] = step;
    }
    return x;
  }

  /** The sum over j from 1 to before k of u[j] v[k - j]. */
  private static double backwards(double[] u, double[] v, int k) {
    double sum = 0;
    for (int j = 1; j < k; j++) {
      sum += u[j] * v[k - j];
    }
    return sum;
  }

  /** Adds factor times u[k - j] to v[j], for each j from 1 to before k. */
  private static void addBackwards(double factor, double[] u, double[] v, int k) {
    for (int j = 1; j < k; j++) {
      v[j] += factor * u[k - j];
    }
  }
}
