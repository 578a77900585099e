package dev.loopgauge.estimate;

import java.util.Arrays;

/** The median of some values. */
final class Median {
  /** So many values tell the median to within a percent. */
  private static final int ENOUGH = 8192;

  private Median() {}

  /** The median of some values, the larger of two middle ones; 0 of none. They end up sorted. */
  static double of(double[] values) {
    Arrays.sort(values);
    return values.length == 0 ? 0 : values[values.length / 2];
  }

  /** The median magnitude of some values, from some of them spread evenly where there are many. */
  static double magnitude(double[] values) {
    int step = Math.max(1, values.length / ENOUGH);
    double[] sizes = new double[(values.length + step - 1) / step];
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] = Math.abs(values[i * step]);
    }
    return of(sizes);
  }
}
