package dev.loopgauge.journal;

import dev.loopgauge.verify.Median;
import java.util.Arrays;

/** Statistics that a few wild readings can't move. */
final class Robust {
  /** The 75 % point of the normal distribution: makes a median deviation a standard one. */
  private static final double NORMAL_QUARTILE = 0.6745;

  private Robust() {}

  /**
   * The median absolute deviation from the median, scaled so that it estimates the standard
   * deviation of normal readings (P. J. Rousseeuw and C. Croux, J. Am. Stat. Assoc. 88, 1993).
   */
  static double spread(double[] values) {
    double middle = Median.of(values);
    return Median.of(Arrays.stream(values).map(value -> Math.abs(value - middle)).toArray())
        / NORMAL_QUARTILE;
  }

  /**
   * How the readings scatter from one to the next, as the standard deviation of a single one. Steps
   * and drift hardly add to it.
   *
   * @param values at least two
   */
  static double scatter(double[] values) {
    double[] moves = new double[values.length - 1];
    for (int i = 0; i < moves.length; i++) {
      moves[i] = Math.abs(values[i + 1] - values[i]);
    }
    return Median.of(moves) / NORMAL_QUARTILE / Math.sqrt(2);
  }
}
