package dev.loopgauge.stats;

/** The arithmetic mean. */
final class Mean {
  private Mean() {}

  /** The mean of at least one value. */
  static double of(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }
}
