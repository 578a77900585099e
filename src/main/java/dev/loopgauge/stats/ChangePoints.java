package dev.loopgauge.stats;

import java.util.ArrayList;
import java.util.List;

/**
 * Parts values where they step to another level and stay there. A single value that lies off is no
 * step: the next one must agree with it, and not with the level before.
 *
 * @param leastStep what moves less than this is no step, 0 or more, in the unit of the values
 * @param fewestBefore with fewer values than this before it, a last value that is far off counts as
 *     a step, since nobody knows which of them is the outlier; 0 where it never does
 */
public record ChangePoints(double leastStep, int fewestBefore) {
  /**
   * How many standard deviations a value may be off its level (B. Iglewicz and D. C. Hoaglin, "How
   * to Detect and Handle Outliers", 1993, from memory): of normal values 1 in 2,150 is further off.
   */
  public static final double LIMIT = 3.5;

  /** Enough to make a level, few enough to follow a drift. */
  private static final int REMEMBERED = 9;

  /**
   * Parts the values.
   *
   * @param values in the order of time
   * @param spread the standard deviation of each
   * @return at least one segment; together they hold all values
   */
  public List<Segment> segments(double[] values, double[] spread) {
    List<Segment> segments = new ArrayList<>();
    int from = 0;
    List<Double> recent = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      if (recent.isEmpty() || isNear(values[i], level(recent), spread[i])) {
        recent.add(values[i]);
      } else if (stays(values, spread, i, level(recent), i - from)) {
        segments.add(new Segment(from, i));
        from = i;
        recent.clear();
        recent.add(values[i]);
      }
    }
    segments.add(new Segment(from, values.length));
    return List.copyOf(segments);
  }

  private boolean stays(double[] values, double[] spread, int at, double level, int before) {
    return at + 1 < values.length
        ? isNear(values[at + 1], values[at], spread[at])
            && !isNear(values[at + 1], level, spread[at + 1])
        : before < fewestBefore;
  }

  private static double level(List<Double> recent) {
    return Median.of(
        recent.subList(Math.max(0, recent.size() - REMEMBERED), recent.size()).stream()
            .mapToDouble(value -> value)
            .toArray());
  }

  private boolean isNear(double value, double level, double spread) {
    return Math.abs(value - level) <= Math.max(leastStep, LIMIT * spread);
  }
}
