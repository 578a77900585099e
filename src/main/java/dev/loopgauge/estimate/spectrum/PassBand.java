package dev.loopgauge.estimate.spectrum;

import java.util.Arrays;

/**
 * Where a path passes sound: the power of its response in bands of a twelfth of an octave, in each
 * the least of the band and its two neighbours either side. Averaged, so that noise in a fitted
 * response doesn't matter; the least, so that an edge of the band lies outside and not inside.
 */
public final class PassBand {
  private static final int BANDS_PER_OCTAVE = 12;
  private static final int NEIGHBOURS = 2;

  private PassBand() {}

  /** The passed power of each bin, from what the response passes of each. */
  public static double[] of(double[] powers) {
    int[] edges = edges(powers.length);
    double[] means = new double[edges.length - 1];
    for (int band = 0; band < means.length; band++) {
      means[band] = mean(powers, edges[band], edges[band + 1]);
    }
    double[] passed = new double[powers.length];
    for (int band = 0; band < means.length; band++) {
      Arrays.fill(passed, edges[band], edges[band + 1], least(means, band));
    }
    return passed;
  }

  /** The bin that each band starts with, and after the last the number of bins. */
  private static int[] edges(int bins) {
    int bands = (int) (BANDS_PER_OCTAVE * Math.log(bins) / Math.log(2)) + 1;
    int[] edges = new int[bands + 1];
    for (int band = 1; band < bands; band++) {
      edges[band] = (int) Math.ceil(Math.pow(2, (double) band / BANDS_PER_OCTAVE)) - 1;
    }
    edges[bands] = bins;
    return edges;
  }

  /** Infinite where a band is so narrow that no bin lies in it. */
  private static double mean(double[] powers, int from, int to) {
    double sum = 0;
    for (int k = from; k < to; k++) {
      sum += powers[k];
    }
    return from == to ? Double.POSITIVE_INFINITY : sum / (to - from);
  }

  private static double least(double[] means, int band) {
    double least = Double.POSITIVE_INFINITY;
    int to = Math.min(band + NEIGHBOURS, means.length - 1);
    for (int i = Math.max(band - NEIGHBOURS, 0); i <= to; i++) {
      least = Math.min(least, means[i]);
    }
    return least;
  }
}
