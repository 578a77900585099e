package dev.loopgauge.estimate.spectrum;

/** Finds where a correlation is largest in magnitude, to the limit of floating point. */
public final class PeakSearch {
  private static final int STEPS = 30;

  /** A step of Newton's leaves about the square of itself, in samples. */
  private static final double CLOSE_ENOUGH = 1e-6;

  private PeakSearch() {}

  /** The index of the value of largest magnitude. */
  public static int strongest(double[] values) {
    return strongest(values, 0, values.length);
  }

  /** The index of that among those from one index on and before another. */
  public static int strongest(double[] values, int from, int to) {
    int best = from;
    for (int i = from + 1; i < to; i++) {
      if (Math.abs(values[i]) > Math.abs(values[best])) {
        best = i;
      }
    }
    return best;
  }

  /** The largest magnitude of the values from one index on and before another, 0 of none. */
  public static double most(double[] values, int from, int to) {
    return from < to ? Math.abs(values[strongest(values, from, to)]) : 0;
  }

  /**
   * The extremum within one sample of a lag at which the correlation is larger in magnitude than a
   * sample before and after: Newton's method on the slope, halved back into its bracket where it
   * leaves it.
   */
  public static CrossSpectrum.Point refine(CrossSpectrum cross, double lag) {
    double low = lag - 1;
    double high = lag + 1;
    CrossSpectrum.Point point = cross.at(lag);
    for (int step = 0; step < STEPS; step++) {
      boolean peakIsLater = point.slope() * point.value() > 0;
      if (peakIsLater) {
        low = point.lag();
      } else {
        high = point.lag();
      }
      double next = point.lag() - point.slope() / point.curvature();
      if (!(next >= low && next <= high)) {
        next = (low + high) / 2;
      }
      if (Math.abs(next - point.lag()) < CLOSE_ENOUGH) {
        return point.near(next);
      }
      point = cross.at(next);
    }
    return point;
  }
}
