package dev.loopgauge.verify;

import java.util.Arrays;

/** The middle of some readings, which a few wild ones can't move. */
public final class Median {
  private Median() {}

  /**
   * The middle value, or halfway between the two middle ones.
   *
   * @param values at least one
   */
  public static double of(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }
}
