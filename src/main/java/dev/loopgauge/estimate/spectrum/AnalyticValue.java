package dev.loopgauge.estimate.spectrum;

/**
 * The analytic signal of a correlation at one lag, from some of its bins, with its first and second
 * derivative by the lag: its real part is the correlation, its magnitude the envelope.
 *
 * <p>Bins are summed in short runs that all turn alike, and each sum is then turned to its place: a
 * third of the time of turning each bin by the one before it, and rounding errors don't grow.
 */
public final class AnalyticValue {
  private static final int RUN = 64;

  private final double turn;
  private final double step;
  private final double centre;
  private final double[] cos = new double[RUN];
  private final double[] sin = new double[RUN];
  private double re;
  private double im;
  private double reSlope;
  private double imSlope;
  private double reCurvature;
  private double imCurvature;

  /**
   * The sum of no bin so far.
   *
   * @param transform the length of the transform that the bins are from
   * @param lag from its start, in samples
   * @param centre the bin, or the place between two, that derivatives count from: 0, or the middle
   *     of a band for its envelope
   */
  AnalyticValue(int transform, double lag, double centre) {
    this.step = 2 * Math.PI / transform;
    this.turn = step * lag;
    this.centre = step * centre;
    Phasor phasor = new Phasor(turn, 0);
    for (int i = 0; i < RUN; i++) {
      cos[i] = phasor.re();
      sin[i] = phasor.im();
      phasor.next();
    }
  }

  /**
   * Adds bins.
   *
   * @param bins real and imaginary part in turn
   * @param offset which bin stands first among them
   * @param lowest the first bin to add, above 0
   * @param highest the last; there is nothing to add where it is lower than the first
   */
  AnalyticValue add(double[] bins, int offset, int lowest, int highest) {
    for (int k = lowest; k <= highest; k += RUN) {
      addRun(bins, 2 * (k - offset), k, Math.min(RUN, highest + 1 - k));
    }
    return this;
  }

  private void addRun(double[] bins, int at, int first, int count) {
    double re0 = 0;
    double im0 = 0;
    double re1 = 0;
    double im1 = 0;
    double re2 = 0;
    double im2 = 0;
    for (int i = 0; i < count; i++) {
      double x = bins[at + 2 * i];
      double y = bins[at + 2 * i + 1];
      double real = x * cos[i] - y * sin[i];
      double imaginary = x * sin[i] + y * cos[i];
      double omega = step * i;
      re0 += real;
      im0 += imaginary;
      re1 += omega * real;
      im1 += omega * imaginary;
      re2 += omega * omega * real;
      im2 += omega * omega * imaginary;
    }
    double omega = step * first - centre;
    double turnRe = Math.cos(turn * first);
    double turnIm = Math.sin(turn * first);
    re += turnRe * re0 - turnIm * im0;
    im += turnRe * im0 + turnIm * re0;
    double slopeRe = omega * re0 + re1;
    double slopeIm = omega * im0 + im1;
    reSlope -= turnRe * slopeIm + turnIm * slopeRe;
    imSlope += turnRe * slopeRe - turnIm * slopeIm;
    double curvatureRe = omega * (slopeRe + re1) + re2;
    double curvatureIm = omega * (slopeIm + im1) + im2;
    reCurvature -= turnRe * curvatureRe - turnIm * curvatureIm;
    imCurvature -= turnRe * curvatureIm + turnIm * curvatureRe;
  }

  /** The real part. */
  double re() {
    return re;
  }

  /** The imaginary part. */
  double im() {
    return im;
  }

  /** The real part's derivative by the lag. */
  double reSlope() {
    return reSlope;
  }

  /** The real part's second derivative by the lag. */
  double reCurvature() {
    return reCurvature;
  }

  /** The envelope. */
  double magnitude() {
    return Math.hypot(re, im);
  }

  /** Where Newton's method goes from here to the top of the squared envelope, in samples. */
  public double newtonStep() {
    double slope = re * reSlope + im * imSlope;
    double curvature = reSlope * reSlope + imSlope * imSlope + re * reCurvature + im * imCurvature;
    return curvature < 0 ? -slope / curvature : 0;
  }
}
