package dev.loopgauge.estimate;

/**
 * Solves symmetric Toeplitz systems, as least-squares fits of a filter lead to, by Levinson's
 * recursion in n^2 steps (G. H. Golub, C. F. Van Loan, "Matrix Computations", algorithm 4.7.2, from
 * memory).
 */
final class ToeplitzSystem {
  private ToeplitzSystem() {}

  /**
   * The x with sum over j of r[|i - j|] x[j] = b[i] for each i.
   *
   * @param r the first row; r[0] above 0 and the matrix positive definite
   * @param b the right-hand side, as long as {@code r}
   */
  static double[] solve(double[] r, double[] b) {
    int n = b.length;
    double[] x = new double[n];
    double[] predictor = new double[n];
    double[] previous = new double[n];
    double error = r[0];
    x[0] = b[0] / r[0];
    for (int k = 1; k < n; k++) {
      double reflection = r[k];
      double missing = b[k] - r[k] * x[0];
      for (int j = 1; j < k; j++) {
        reflection += predictor[j] * r[k - j];
        missing -= r[k - j] * x[j];
      }
      reflection = -reflection / error;
      System.arraycopy(predictor, 0, previous, 0, k);
      for (int j = 1; j < k; j++) {
        predictor[j] = previous[j] + reflection * previous[k - j];
      }
      predictor[k] = reflection;
      error *= 1 - reflection * reflection;
      double step = missing / error;
      for (int j = 0; j < k; j++) {
        x[j] += step * predictor[k - j];
      }
      x[k] = step;
    }
    return x;
  }
}
