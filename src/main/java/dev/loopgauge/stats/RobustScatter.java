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

  /**
   * How far readings lie off the straight line between the two beside them, as the standard
   * deviation of a single one. A slope adds nothing to it; a step, or a slope that begins or ends,
   * moves two of these distances at most, so the median holds.
   *
   * @param times when they were made, rising
   * @param values as many, at least three
   */
  public static double fromBends(double[] times, double[] values) {
    double[] bends = new double[values.length - 2];
    for (int i = 0; i < bends.length; i++) {
      double share = (times[i + 1] - times[i]) / (times[i + 2] - times[i]);
      double between = values[i] + share * (values[i + 2] - values[i]);
      double deviation = Math.sqrt(1 + share * share + (1 - share) * (1 - share));
      bends[i] = Math.abs(values[i + 1] - between) / deviation;
    }
    return ofMedianMagnitude(Median.of(bends));
  }
}
