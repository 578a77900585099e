package dev.loopgauge.estimate.spectrum;

/**
 * How high a correlation is at most around each whole lag. Its values there don't tell: of sound
 * near half the rate, as of applause in a voice's band, those beside a peak midway between two of
 * them are lower than the ripple next to it, which has the other sign. So it is looked at twice as
 * often, and around each largest value a sine through three values tells the height.
 */
final class HalfLags {
  private final double[] whole;
  private final double[] between;
  private final int first;

  /**
   * Looks at a correlation.
   *
   * @param whole its values at whole lags
   * @param first the first of them
   */
  HalfLags(double[] whole, CrossSpectrum correlation, int first) {
    this.whole = whole;
    this.between = correlation.lagsFrom(first + 0.5, whole.length - 1);
    this.first = first;
  }

  /**
   * The greatest height within half a sample of each whole lag, where it can be the greatest of
   * all; elsewhere the greatest value. A sine below half the rate is no more than sqrt(2) times as
   * high as the nearest of its values (derived), and then counts for as much more at most ({@link
   * PartialOverlap}).
   */
  double[] heights() {
    double[] most = new double[whole.length];
    for (int i = 0; i < most.length; i++) {
      double before = i == 0 ? 0 : Math.abs(between[i - 1]);
      double after = i == between.length ? 0 : Math.abs(between[i]);
      most[i] = Math.max(Math.abs(whole[i]), Math.max(before, after));
    }
    double enough = PeakSearch.most(most, 0, most.length) / 2;
    for (int i = 0; i < most.length; i++) {
      if (most[i] >= enough) {
        most[i] = height(highest(2 * i));
      }
    }
    return most;
  }

  /** The lag, whole or midway, that is nearest to that height. */
  double highestNear(int lag) {
    return first + highest(2 * (lag - first)) / 2.0;
  }

  private int highest(int middle) {
    int best = middle;
    for (int i = Math.max(0, middle - 1); i <= Math.min(2 * between.length, middle + 1); i++) {
      best = height(i) > height(best) ? i : best;
    }
    return best;
  }

  /** Of y = a cos(w t + p) at t = -1, 0, 1: a, from w by the sum of the outer two (derived). */
  private double height(int i) {
    double here = value(i);
    if (!isLargest(i)) {
      return Math.abs(here);
    }
    double cosine = (value(i - 1) + value(i + 1)) / (2 * here);
    if (!(Math.abs(cosine) < 1)) {
      return Math.abs(here);
    }
    double sine = (value(i - 1) - value(i + 1)) / (2 * Math.sqrt(1 - cosine * cosine));
    return Math.sqrt(here * here + sine * sine);
  }

  private boolean isLargest(int i) {
    double here = Math.abs(value(i));
    return i > 0
        && i < 2 * between.length
        && here >= Math.abs(value(i - 1))
        && here >= Math.abs(value(i + 1));
  }

  private double value(int i) {
    return i % 2 == 0 ? whole[i / 2] : between[i / 2];
  }
}
