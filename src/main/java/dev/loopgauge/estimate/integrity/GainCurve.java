package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.spectrum.SymmetricSystem;
import dev.loopgauge.stats.Odds;

/**
 * The complex gain on a sound that makes of it what a return holds, a parabola over time: least
 * squares with six unknowns, on the sound and its Hilbert transform.
 */
final class GainCurve {
  private static final int UNKNOWNS = 6;

  private final double[] sent;
  private final double[] quadrature;
  private final double[] ret;
  private final int side;
  private final SweepMoments moments;

  /**
   * Of signals of one length.
   *
   * @param quadrature the Hilbert transform of what was sent
   * @param side how many samples a curve is fitted to
   */
  GainCurve(double[] sent, double[] quadrature, double[] ret, int side) {
    this.sent = sent;
    this.quadrature = quadrature;
    this.ret = ret;
    this.side = side;
    this.moments = new SweepMoments(sent, quadrature, ret, side);
  }

  /** How often the sound that was sent crosses zero in a stretch. */
  int crossings(int from, int to) {
    return crossings(sent, from, to);
  }

  /** How often a sound crosses zero from one sample on and before another. */
  static int crossings(double[] sound, int from, int to) {
    int crossings = 0;
    for (int i = from + 1; i < to; i++) {
      crossings += sound[i - 1] < 0 != sound[i] < 0 ? 1 : 0;
    }
    return crossings;
  }

  /**
   * A sound at one instant, as a complex number.
   *
   * @param re its real part
   * @param im its imaginary part
   * @param varianceRe of the real part, for noise of variance 1
   * @param varianceIm of the imaginary part
   * @param covariance of both
   */
  record Sound(double re, double im, double varianceRe, double varianceIm, double covariance) {
    /** What this is more than another, fitted to other samples. */
    Sound less(Sound other) {
      return new Sound(
          re - other.re,
          im - other.im,
          varianceRe + other.varianceRe,
          varianceIm + other.varianceIm,
          covariance + other.covariance);
    }

    double magnitude() {
      return Math.hypot(re, im);
    }

    /** The energy that is left more where this is taken to be silent. */
    double energy() {
      return (re * re * varianceIm - 2 * re * im * covariance + im * im * varianceRe)
          / (varianceRe * varianceIm - covariance * covariance);
    }
  }

  /**
   * A curve, and what it makes of the sound at one instant.
   *
   * @param curve the gain there, real and imaginary, its slope and half its bend, over the stretch
   * @param sound the sound at the instant
   * @param left the energy that the curve leaves of the return
   */
  @SuppressWarnings("ArrayRecordComponent") // read once within one test, never compared
  record Fitted(double[] curve, Sound sound, double left) {
    /** By how much the slope at the instant would change the sound over the stretch. */
    double change() {
      return sound.magnitude() * Math.hypot(curve[2], curve[3]) / Math.hypot(curve[0], curve[1]);
    }

    /**
     * Whether there is sound at the instant, beyond doubt.
     *
     * @param values how many independent values are left
     */
    boolean isHeard(double values) {
      return values / 2 * Math.log1p(sound.energy() / Math.max(Double.MIN_NORMAL, left))
          > Odds.BEYOND_DOUBT;
    }
  }

  /**
   * The curve over a side, and the sound at an instant.
   *
   * @param from the side's first sample
   * @param at the instant, in samples
   */
  Fitted over(int from, int at) {
    double[] sums = moments.over(from, from + side, at);
    double[][] products = new double[UNKNOWNS][UNKNOWNS];
    double[] right = new double[UNKNOWNS];
    for (int k = 0; k < UNKNOWNS; k += 2) {
      right[k] = sums[SweepMoments.SENT_RETURN + k / 2];
      right[k + 1] = -sums[SweepMoments.QUADRATURE_RETURN + k / 2];
      for (int l = 0; l <= k; l += 2) {
        int power = (k + l) / 2;
        products[k][l] = sums[SweepMoments.SENT + power];
        products[k + 1][l] = -sums[SweepMoments.BOTH + power];
        products[k + 1][l + 1] = sums[SweepMoments.QUADRATURE + power];
        products[k][l + 1] = -sums[SweepMoments.BOTH + power];
      }
    }
    return fitted(products, right, sums[SweepMoments.RETURN], at);
  }

  private Fitted fitted(double[][] products, double[] right, double energy, int at) {
    for (int k = 0; k < UNKNOWNS; k++) {
      products[k][k] += Double.MIN_NORMAL;
      for (int l = 0; l < k; l++) {
        products[l][k] = products[k][l];
      }
    }
    SymmetricSystem system = new SymmetricSystem(products);
    double[] curve = system.solve(right);
    double left = energy;
    for (int k = 0; k < UNKNOWNS; k++) {
      left -= curve[k] * right[k];
    }
    double x = sent[at];
    double q = quadrature[at];
    double[] ofRe = {x, -q, 0, 0, 0, 0};
    double[] ofIm = {q, x, 0, 0, 0, 0};
    double[] byRe = system.solve(ofRe);
    double[] byIm = system.solve(ofIm);
    Sound sound =
        new Sound(
            x * curve[0] - q * curve[1],
            q * curve[0] + x * curve[1],
            x * byRe[0] - q * byRe[1],
            q * byIm[0] + x * byIm[1],
            q * byRe[0] + x * byRe[1]);
    return new Fitted(curve, sound, Math.max(0, left));
  }

  /**
   * Writes what a curve leaves of the return, times the conjugate of the sound.
   *
   * @param from the side's first sample
   * @param at the instant that it was fitted for
   * @param left gets the real and the imaginary parts
   * @param offset where in it they start
   */
  void leave(Fitted fitted, int from, int at, double[][] left, int offset) {
    double[] curve = fitted.curve();
    for (int i = from; i < from + side; i++) {
      double time = (double) (i - at) / side;
      double rest =
          ret[i]
              - (curve[0] + time * (curve[2] + time * curve[4])) * sent[i]
              + (curve[1] + time * (curve[3] + time * curve[5])) * quadrature[i];
      left[0][offset + i - from] = rest * sent[i];
      left[1][offset + i - from] = rest * quadrature[i];
    }
  }
}
