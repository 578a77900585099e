package dev.loopgauge.estimate.integrity;

/**
 * The complex gain that makes of a reference what a return holds, over any stretch of both: least
 * squares with two unknowns, the parts of the reference and of its Hilbert transform. The sums up
 * to each sample are kept, so that a stretch costs the same however long it is.
 */
final class ComplexGain {
  private static final int XX = 0;
  private static final int XQ = 1;
  private static final int QQ = 2;
  private static final int XY = 3;
  private static final int QY = 4;
  private static final int YY = 5;
  private static final int SUMS = 6;

  private final double[] sums;

  /**
   * Of signals of one length.
   *
   * @param quadrature the reference's Hilbert transform
   */
  ComplexGain(double[] reference, double[] quadrature, double[] ret) {
    this.sums = new double[SUMS * (ret.length + 1)];
    for (int i = 0; i < ret.length; i++) {
      add(SUMS * (i + 1), reference[i], quadrature[i], ret[i]);
    }
  }

  private void add(int at, double x, double q, double y) {
    sums[at + XX] = sums[at + XX - SUMS] + x * x;
    sums[at + XQ] = sums[at + XQ - SUMS] + x * q;
    sums[at + QQ] = sums[at + QQ - SUMS] + q * q;
    sums[at + XY] = sums[at + XY - SUMS] + x * y;
    sums[at + QY] = sums[at + QY - SUMS] + q * y;
    sums[at + YY] = sums[at + YY - SUMS] + y * y;
  }

  /**
   * What a stretch gives.
   *
   * @param played the reference's energy
   * @param heard the return's
   * @param level the complex gain's magnitude
   * @param residual the energy that it leaves of the return
   */
  record Fitted(double played, double heard, double level, double residual) {}

  /** The fit over the samples from one to before another. */
  Fitted over(int from, int to) {
    double xx = sum(XX, from, to);
    double xq = sum(XQ, from, to);
    double qq = sum(QQ, from, to);
    double xy = sum(XY, from, to);
    double qy = sum(QY, from, to);
    double yy = sum(YY, from, to);
    double determinant = xx * qq - xq * xq;
    if (!(determinant > 0)) {
      return new Fitted(xx, yy, 0, yy);
    }
    double a = (xy * qq - qy * xq) / determinant;
    double b = (qy * xx - xy * xq) / determinant;
    return new Fitted(xx, yy, Math.hypot(a, b), Math.max(0, yy - a * xy - b * qy));
  }

  private double sum(int which, int from, int to) {
    return sums[SUMS * to + which] - sums[SUMS * from + which];
  }
}
