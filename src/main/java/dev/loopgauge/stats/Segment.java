package dev.loopgauge.stats;

/**
 * Values in a row that belong to one level.
 *
 * @param from the place of the first of them, 0 or more
 * @param to the place behind the last, above {@code from}
 */
public record Segment(int from, int to) {
  /** The level: the median of its values. */
  public double level(double[] values) {
    return Median.of(values, from, to);
  }
}
