package dev.loopgauge.estimate;

import java.util.Arrays;

/** The median size of many values. */
final class Median {
  /** So many values tell the median to within a percent. */
  private static final int ENOUGH = 8192;

  private Median() {}

  /** The median magnitude of some values, from some of them spread evenly where there are many. */
  static double magnitude(double[] values) {
    int step = Math.max(1, values.length / ENOUGH);
    double[] sizes = new double[(values.length + step - 1) / step];
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] = Math.abs(values[i * step]);
    }
    Arrays.sort(sizes);
    return sizes[sizes.length / 2];
  }
}
