package dev.loopgauge.stats;

import java.util.Arrays;

/** The middle of some values, which a few wild ones can't move. */
public final class Median {
  /** How many values tell the median to within a percent. */
  private static final int ENOUGH = 8192;

  private Median() {}

  /**
   * The middle value, or halfway between the two middle ones.
   *
   * @param values at least one; they stay as they are
   * @throws IllegalArgumentException when there is none
   */
  public static double of(double... values) {
    if (values.length == 0) {
      throw new IllegalArgumentException("a median needs at least one value, not 0");
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }

  /**
   * The median of the values from one place to before another.
   *
   * @throws IllegalArgumentException when there is none between
   */
  public static double of(double[] values, int from, int to) {
    return of(Arrays.copyOfRange(values, from, to));
  }

  /**
   * The median magnitude of some values, from {@value #ENOUGH} to twice as many of them, spread
   * evenly, where there are more.
   *
   * @throws IllegalArgumentException when there is none
   */
  public static double magnitude(double[] values) {
    int step = Math.max(1, values.length / ENOUGH);
    double[] sizes = new double[(values.length + step - 1) / step];
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] = Math.abs(values[i * step]);
    }
    return of(sizes);
  }
}
