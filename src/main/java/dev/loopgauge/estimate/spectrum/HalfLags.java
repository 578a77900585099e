package dev.loopgauge.estimate.spectrum;

/**
 * How high a correlation is at most around each whole lag. Its values there don't tell: of sound
 * near half the rate, as of applause in a voice's band, those beside a peak midway between two of
 * them are lower than the ripple next to it, which has the other sign. So it is looked at twice as
 * often, and around each largest value a sine through three values tells the height.
 */
final class HalfLags {
  private final double[] values;
  private final double[] heights;
  private final int first;

  /**
   * Looks at a correlation.
   *
   * @param whole its values at whole lags
   * @param first the first of them
   */
  HalfLags(double[] whole, CrossSpectrum correlation, int first) {
    double[] between = correlation.lagsFrom(first + 0.5, whole.length - 1);
    this.first = first;
    this.values = new double[2 * whole.length - 1];
    this.heights = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = i % 2 == 0 ? whole[i / 2] : between[i / 2];
    }
    for (int i = 0; i < values.length; i++) {
      heights[i] = isLargest(i) ? height(i) : Math.abs(values[i]);
    }
  }

  private boolean isLargest(int i) {
    double here = Math.abs(values[i]);
    return i > 0
        && i + 1 < values.length
        && here >= Math.abs(values[i - 1])
        && here >= Math.abs(values[i + 1]);
  }

  /** Of y = a cos(w t + p) at t = -1, 0, 1: a, from w by the sum of the outer two (derived). */
  private double height(int i) {
    double cosine = (values[i - 1] + values[i + 1]) / (2 * values[i]);
    if (!(Math.abs(cosine) < 1)) {
      return Math.abs(values[i]);
    }
    double sine = (values[i - 1] - values[i + 1]) / (2 * Math.sqrt(1 - cosine * cosine));
    return Math.sqrt(values[i] * values[i] + sine * sine);
  }

  /** The greatest height within half a sample of each whole lag. */
  double[] heights() {
    double[] most = new double[heights.length / 2 + 1];
    for (int i = 0; i < most.length; i++) {
      most[i] = heights[highest(2 * i)];
    }
    return most;
  }

  /** The lag, whole or midway, that is nearest to that height. */
  double highestNear(int lag) {
    return first + highest(2 * (lag - first)) / 2.0;
  }

  private int highest(int middle) {
    int best = middle;
    for (int i = Math.max(0, middle - 1); i <= Math.min(heights.length - 1, middle + 1); i++) {
      best = heights[i] > heights[best] ? i : best;
    }
    return best;
  }
}
