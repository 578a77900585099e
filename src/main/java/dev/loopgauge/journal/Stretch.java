package dev.loopgauge.journal;

import dev.loopgauge.verify.Median;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Readings in a row that belong to one state of the rig.
 *
 * @param from the place of the first of them
 * @param to the place behind the last
 */
record Stretch(int from, int to) {
  /** The limit of B. Iglewicz and D. C. Hoaglin, "How to Detect and Handle Outliers", 1993. */
  static final double LIMIT = 3.5;

  /** Digital rigs step by whole samples; what rounds to none is a drift, or noise. */
  private static final double LEAST_STEP = 0.5;

  /** Enough to make a level, few enough to follow a drift. */
  private static final int REMEMBERED = 9;

  /** With fewer readings before it, one that is far off is no outlier: nobody knows which is. */
  private static final int FEWEST = 3;

  /**
   * Parts readings where they step to another level and stay there: the next one agrees with the
   * first at the new level, or the step is the last reading after very few.
   *
   * @param values the readings in the order of time
   * @param spread the standard deviation of each
   */
  static List<Stretch> of(double[] values, double[] spread) {
    List<Stretch> stretches = new ArrayList<>();
    int from = 0;
    List<Double> recent = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      if (recent.isEmpty() || isNear(values[i], level(recent), spread[i])) {
        recent.add(values[i]);
      } else if (stays(values, spread, i, level(recent), i - from)) {
        stretches.add(new Stretch(from, i));
        from = i;
        recent.clear();
        recent.add(values[i]);
      }
    }
    stretches.add(new Stretch(from, values.length));
    return List.copyOf(stretches);
  }

  private static boolean stays(double[] values, double[] spread, int at, double level, int before) {
    return at + 1 < values.length
        ? isNear(values[at + 1], values[at], spread[at])
            && !isNear(values[at + 1], level, spread[at + 1])
        : before < FEWEST;
  }

  private static double level(List<Double> recent) {
    return Median.of(
        recent.subList(Math.max(0, recent.size() - REMEMBERED), recent.size()).stream()
            .mapToDouble(value -> value)
            .toArray());
  }

  private static boolean isNear(double value, double level, double spread) {
    return Math.abs(value - level) <= Math.max(LEAST_STEP, LIMIT * spread);
  }

  /** The level of the stretch: the median of its readings. */
  double level(double[] values) {
    return Median.of(Arrays.copyOfRange(values, from, to));
  }
}
