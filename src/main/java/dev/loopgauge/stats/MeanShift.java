package dev.loopgauge.stats;

/**
 * By how much values moved from one level to another, with what that rests on: the noise that each
 * is known to have, and how they scatter from one to the next, which tells of all that moves them
 * besides.
 *
 * @param value the mean after less the mean before
 * @param fromNoise its standard uncertainty from the known noise; 0 where unknown
 * @param fromScatter its standard uncertainty from the scatter; 0 without degrees of freedom
 * @param degrees the degrees of freedom of the scatter, 0 or more
 */
public record MeanShift(double value, double fromNoise, double fromScatter, double degrees) {
  /**
   * The shift between two groups of values, each in the order of time.
   *
   * <p>The scatter is that of differences between neighbours within each group, which a slow
   * wandering hardly adds to; its degrees of freedom are those of J. von Neumann's mean square
   * successive difference (Ann. Math. Stat. 12, 1941, from memory): 2 m^2 / (3 m - 1) for m
   * differences.
   *
   * @param before at least one value
   * @param after at least one value
   * @param noiseBefore the standard uncertainty of each value before, from noise alone
   * @param noiseAfter the same after
   */
  public static MeanShift of(
      double[] before, double[] after, double[] noiseBefore, double[] noiseAfter) {
    return of(before, after, noiseBefore, noiseAfter, before);
  }

  /**
   * The same where only some of the values before are compared.
   *
   * @param scattered all values before, which tell the scatter; at least one
   */
  public static MeanShift of(
      double[] before,
      double[] after,
      double[] noiseBefore,
      double[] noiseAfter,
      double[] scattered) {
    int moves = scattered.length + after.length - 2;
    double squares = squaredMoves(scattered) + squaredMoves(after);
    double scatter = moves == 0 ? 0 : Math.sqrt(squares / (2 * moves));
    return new MeanShift(
        Mean.of(after) - Mean.of(before),
        Math.hypot(ofMean(noiseBefore), ofMean(noiseAfter)),
        scatter * Math.sqrt(1.0 / before.length + 1.0 / after.length),
        moves == 0 ? 0 : 2.0 * moves * moves / (3.0 * moves - 1));
  }

  /** What is left of the shift where something else explains a part of it. */
  public MeanShift with(double rest) {
    return new MeanShift(rest, fromNoise, fromScatter, degrees);
  }

  private static double squaredMoves(double[] values) {
    double sum = 0;
    for (int i = 1; i < values.length; i++) {
      sum += Math.pow(values[i] - values[i - 1], 2);
    }
    return sum;
  }

  private static double ofMean(double[] noise) {
    double squares = 0;
    for (double one : noise) {
      squares += one * one;
    }
    return Math.sqrt(squares) / noise.length;
  }

  /**
   * Whether the shift is there, so that values of one level give as much no more often than {@code
   * chance}. As for {@link Slope#isThere} two tests must hold: one against the known noise, one
   * against the scatter by Student's t. Without a degree of freedom nothing can be told.
   *
   * @param chance of a false alarm, 0 to 1
   */
  public boolean isThere(double chance) {
    return TwoTests.passes(value, fromNoise, fromScatter, degrees, chance);
  }

  /** The expanded uncertainty, k = 2, as that of {@link Slope#expanded}. */
  public double expanded() {
    return TwoTests.expanded(fromNoise, fromScatter, degrees);
  }
}
