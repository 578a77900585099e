package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.signal.Samples;
import java.util.Arrays;

/**
 * Finds how fast a delay drifts within one window, before it is known to better than some
 * milliseconds. The window is cut into short blocks, each of which shows the delay of its moment;
 * the drift is that by which their correlations, moved against each other, add up best.
 */
final class SlopeSearch {
  /** The steepest drift that is looked for: a pull-down of 0.1 %, and a little. */
  static final double STEEPEST = 1.2e-3;

  /** A window is cut into this many blocks, or more where they would be longer than the longest. */
  private static final int BLOCKS = 16;

  private static final int LONGEST_BLOCK = 1 << 13;

  private final Samples reference;
  private final Samples ret;
  private final int reach;
  private final int block;
  private final int count;

  private SlopeSearch(Samples reference, Samples ret) {
    this.reference = reference;
    this.ret = ret;
    this.reach = (int) Math.ceil(STEEPEST * reference.length()) + 16;
    this.block = Math.min(LONGEST_BLOCK, reference.length() / BLOCKS);
    this.count = reference.length() / block;
  }

  /** A drift, and the delay in the middle of the window, to within a sample or so. */
  record Slope(double perSample, int lag) {}

  /**
   * Finds the drift.
   *
   * @param ret the return, already moved by about the delay, and readable on both sides
   */
  static Slope of(Samples reference, Samples ret) {
    return new SlopeSearch(reference, ret).find();
  }

  private Slope find() {
    double[][] lags = correlations();
    double step = 2.0 / reference.length();
    int steps = (int) Math.ceil(STEEPEST / step);
    Slope best = new Slope(0, 0);
    double most = 0;
    double[] sum = new double[2 * reach + 1];
    for (int i = -steps; i <= steps; i++) {
      int peak = addUp(lags, i * step, sum);
      double height = Math.abs(sum[peak]);
      if (height > most) {
        most = height;
        best = new Slope(i * step, peak - reach);
      }
    }
    return best;
  }

  /** Adds the blocks up along one drift; gives the index of the strongest sum. */
  private int addUp(double[][] lags, double slope, double[] sum) {
    Arrays.fill(sum, 0);
    for (int i = 0; i < lags.length; i++) {
      double middle = (i + 0.5) * block - reference.length() / 2.0;
      int moved = (int) Math.rint(slope * middle);
      int from = Math.max(0, -moved);
      int to = Math.min(sum.length, sum.length - moved);
      for (int lag = from; lag < to; lag++) {
        sum[lag] += lags[i][lag + moved];
      }
    }
    return PeakSearch.strongest(sum);
  }

  private double[][] correlations() {
    RealFft fft = new RealFft(RealFft.lengthFor(block + 2 * reach + 1));
    double[] x = new double[fft.length()];
    double[] y = new double[fft.length()];
    double[][] lags = new double[count][];
    for (int i = 0; i < count; i++) {
      Arrays.fill(x, block, x.length, 0);
      reference.copyTo(i * block, x, 0, block);
      ret.copyTo(i * block - reach, y, 0, y.length);
      fft.forward(x);
      fft.forward(y);
      double[] product = new double[fft.length()];
      Packed.accumulateCrossSpectrum(x, y, product);
      fft.inverse(product);
      lags[i] = Arrays.copyOf(product, 2 * reach + 1);
    }
    return lags;
  }
}
