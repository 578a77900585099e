package dev.loopgauge.stats;

import java.util.Arrays;

/**
 * Standard deviations that a few wild readings can't move: medians of magnitudes, scaled so that
 * they estimate the standard deviation of normal readings (P. J. Rousseeuw and C. Croux,
 * "Alternatives to the median absolute deviation", J. Am. Stat. Assoc. 88, 1993, from memory).
 */
public final class RobustScatter {
  /** The 75 % point of the standard normal distribution: half of its magnitudes are below it. */
  private static final double NORMAL_QUARTILE = 0.6744897501960817;

  private RobustScatter() {}

  /** The standard deviation of normal values about 0 whose median magnitude is this. */
  public static double ofMedianMagnitude(double median) {
    return median / NORMAL_QUARTILE;
  }

  /**
   * The scaled median absolute deviation from the median.
   *
   * @param values at least one
   */
  public static double aboutMedian(double[] values) {
    double middle = Median.of(values);
    return ofMedianMagnitude(
        Median.of(Arrays.stream(values).map(value -> Math.abs(value - middle)).toArray()));
  }

  /**
   * How the readings scatter from one to the next, as the standard deviation of a single one. Steps
   * and drift hardly add to it.
   *
   * @param values at least two
   */
  public static double fromMoves(double[] values) {
    double[] moves = new double[values.length - 1];
    for (int i = 0; i < moves.length; i++) {
      moves[i] = Math.abs(values[i + 1] - values[i]);
    }
    return ofMedianMagnitude(Median.of(moves)) / Math.sqrt(2);
  }
}
