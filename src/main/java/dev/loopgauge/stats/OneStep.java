package dev.loopgauge.stats;

import java.util.Optional;

/**
 * The one step that explains values best, by least squares: a level before a value, another after
 * it, and the value itself, in which the step happens, anywhere. A value that lies off alone is no
 * step: on each side two must have weight.
 *
 * @param at the number of the value in which it happens
 * @param share how much of that value is like those before, 0 to 1: when in it the step happens
 * @param value the level after it less the one before
 * @param left the weighted sum of the squared distances of the values from their levels
 * @param spread the variance of the step for values of variance 1 at weight 1
 * @param count how many values have weight
 */
public record OneStep(int at, double share, double value, double left, double spread, int count) {
  private static final int SIDE = 2;

  /** What is fitted: both levels, and the value between them. */
  private static final int FITTED = 3;

  /**
   * The best step; empty where fewer than four values have weight.
   *
   * @param values in the order of time
   * @param weights as many, 0 or more; one over the variance of each value where that is known
   */
  public static Optional<OneStep> of(double[] values, double[] weights) {
    Level all = Level.NONE;
    for (int i = 0; i < values.length; i++) {
      all = all.with(values[i], weights[i]);
    }
    OneStep best = null;
    Level before = Level.NONE;
    for (int at = 0; at < values.length; at++) {
      Level rest = all.without(before.with(values[at], weights[at]));
      if (before.count >= SIDE && rest.count >= SIDE) {
        OneStep step = between(at, values[at], before, rest, all.count);
        best = best == null || step.left < best.left ? step : best;
      }
      before = before.with(values[at], weights[at]);
    }
    return Optional.ofNullable(best);
  }

  private static OneStep between(int at, double here, Level before, Level after, int count) {
    double moved = after.mean() - before.mean();
    double share = moved == 0 ? 0 : (after.mean() - here) / moved;
    return new OneStep(
        at,
        Math.max(0, Math.min(1, share)),
        moved,
        Math.max(0, before.left() + after.left()),
        1 / before.weight + 1 / after.weight,
        count);
  }

  /** Weighted sums of some values. */
  private record Level(double weight, double sum, double squares, int count) {
    static final Level NONE = new Level(0, 0, 0, 0);

    Level with(double value, double weighing) {
      return new Level(
          weight + weighing,
          sum + weighing * value,
          squares + weighing * value * value,
          count + (weighing > 0 ? 1 : 0));
    }

    Level without(Level some) {
      return new Level(
          weight - some.weight, sum - some.sum, squares - some.squares, count - some.count);
    }

    double mean() {
      return sum / weight;
    }

    double left() {
      return squares - sum * sum / weight;
    }
  }

  /**
   * Whether the step is there, so that values of one level give one no more often than {@code
   * chance}: Student's t of the scatter about both levels, for each place that it could be at (C.
   * E. Bonferroni's inequality; stricter than need be, since places share values). Without a degree
   * of freedom nothing can be told.
   *
   * @param chance of a false alarm, 0 to 1
   */
  public boolean isThere(double chance) {
    int degrees = count - FITTED;
    double scatter = Math.sqrt(left / degrees * spread);
    return degrees > 0
        && value != 0
        && (scatter == 0 || isRarer(Math.abs(value / scatter), degrees, chance / count));
  }

  /**
   * Whether Student's t lies so far out more seldom than by a chance. It is nowhere rarer there
   * than a normal value (J. L. Jensen's inequality), which is no rarer than R. D. Gordon's bound of
   * 1941 (from memory): mostly that settles it, and the classes that know Student's t stay
   * unloaded.
   */
  private static boolean isRarer(double t, int degrees, double chance) {
    double normal = Math.sqrt(2 / Math.PI) * t / (1 + t * t) * Math.exp(-t * t / 2);
    return normal < chance && Quantiles.studentBeyond(t, degrees) < chance;
  }

  /**
   * The logarithm of likelihoods by which the step explains its values better than a line through
   * them does, of normal values whose scatter nobody knows: half their number times the logarithm
   * of the ratio of what is left, less half the logarithm of their number for each of the two that
   * the step has to fit more (G. Schwarz, "Estimating the Dimension of a Model", Ann. Stat. 6,
   * 1978, from memory).
   *
   * @param line through the same values, with the same weights
   */
  public double oddsAgainst(StraightLine line) {
    double ratio = line.squares() / Math.max(left, Double.MIN_NORMAL);
    return count / 2.0 * Math.log(ratio) - Math.log(count);
  }
}
