package dev.loopgauge.estimate.spectrum;

/**
 * Solves small symmetric positive definite systems by Cholesky's factors (G. H. Golub, C. F. Van
 * Loan, "Matrix Computations", section 4.2, from memory). One part in 10^9 is added to each
 * diagonal element, so that unknowns that can't be told apart come out large and not infinite.
 */
public final class SymmetricSystem {
  private static final double RIDGE = 1e-9;

  private final double[][] lower;

  /**
   * Factors a matrix.
   *
   * @param matrix symmetric, its diagonal above 0
   */
  public SymmetricSystem(double[][] matrix) {
    int n = matrix.length;
    this.lower = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = i == j ? matrix[i][i] * (1 + RIDGE) : matrix[i][j];
        for (int k = 0; k < j; k++) {
          sum -= lower[i][k] * lower[j][k];
        }
        lower[i][j] = i == j ? Math.sqrt(Math.max(sum, RIDGE * matrix[i][i])) : sum / lower[j][j];
      }
    }
  }

  /** The x for which the matrix times x is {@code right}. */
  public double[] solve(double[] right) {
    int n = lower.length;
    double[] x = right.clone();
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < i; k++) {
        x[i] -= lower[i][k] * x[k];
      }
      x[i] /= lower[i][i];
    }
    for (int i = n - 1; i >= 0; i--) {
      for (int k = i + 1; k < n; k++) {
        x[i] -= lower[k][i] * x[k];
      }
      x[i] /= lower[i][i];
    }
    return x;
  }
}
