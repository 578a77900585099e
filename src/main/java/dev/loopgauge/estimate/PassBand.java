package dev.loopgauge.estimate;

import java.util.Arrays;

/**
 * Where a path passes sound: the power of its response in bands of a twelfth of an octave, in each
 * the least of the band and its two neighbours either side. Averaged, so that noise in a fitted
 * response doesn't matter; the least, so that an edge of the band lies outside and not inside.
 */
final class PassBand {
  private static final int BANDS_PER_OCTAVE = 12;
  private static final int NEIGHBOURS = 2;

  private PassBand() {}

  /** The passed power of each bin, from the response's magnitude in each bin. */
  static double[] of(double[] magnitudes) {
    int[] bandOf = new int[magnitudes.length];
    Arrays.setAll(bandOf, PassBand::band);
    int bands = bandOf[bandOf.length - 1] + 1;
    double[] sums = new double[bands];
    int[] counts = new int[bands];
    for (int k = 0; k < magnitudes.length; k++) {
      sums[bandOf[k]] += magnitudes[k] * magnitudes[k];
      counts[bandOf[k]]++;
    }
    double[] least = new double[bands];
    Arrays.setAll(least, band -> least(sums, counts, band));
    double[] passed = new double[magnitudes.length];
    Arrays.setAll(passed, k -> least[bandOf[k]]);
    return passed;
  }

  private static double least(double[] sums, int[] counts, int band) {
    double least = Double.POSITIVE_INFINITY;
    int to = Math.min(band + NEIGHBOURS, sums.length - 1);
    for (int i = Math.max(band - NEIGHBOURS, 0); i <= to; i++) {
      if (counts[i] > 0) {
        least = Math.min(least, sums[i] / counts[i]);
      }
    }
    return least;
  }

  private static int band(int k) {
    return (int) (BANDS_PER_OCTAVE * Math.log(k + 1.0) / Math.log(2));
  }
}
