package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.ShortBlocks;

/**
 * How alike reference and return are at the delay found, all frequencies counting alike.
 *
 * <p>The cross-spectrum of short blocks, summed over time, is divided by the root of both powers
 * (the smoothed coherence transform of Knapp and Carter 1976) and summed over frequency. Were the
 * two unrelated, each product would have a random phase. Blocks are tapered by Hann's window, so
 * that a strong tone doesn't leak into bins far off and make them look alike.
 */
public final class Coherence {
  /**
   * The most by which the taper widens the variance of a sum over bins: it correlates each with the
   * next by 2/3 and with the one after by 1/6 (derived), and products by the square of that.
   */
  private static final double NEIGHBOURS = 1 + 2 * (4.0 / 9 + 1.0 / 36);

  private final double[] referencePower;
  private final double[] returnPower;
  private final double[] product;
  private final double[] unrelated;

  /** A coherence of blocks of a length, a power of two. */
  Coherence(int length) {
    this.referencePower = new double[length / 2];
    this.returnPower = new double[length / 2];
    this.product = new double[length / 2];
    this.unrelated = new double[length / 2];
  }

  /**
   * Adds one short block. Where the return is known for a part of it, so much fewer bins are
   * independent.
   */
  void add(ShortBlocks blocks) {
    for (int k = 1; k < product.length; k++) {
      addBin(blocks, k);
    }
  }

  private void addBin(ShortBlocks blocks, int k) {
    double[] reference = blocks.taperedReference();
    double[] ret = blocks.taperedReturn();
    double x = Packed.power(reference, k);
    double y = Packed.power(ret, k);
    referencePower[k] += x;
    returnPower[k] += y;
    product[k] += blocks.product(reference, ret, k);
    unrelated[k] += blocks.wholePerKnown() * x * y / 2;
  }

  /** Adds the blocks of another part of the return. */
  void add(Coherence other) {
    for (int k = 1; k < product.length; k++) {
      referencePower[k] += other.referencePower[k];
      returnPower[k] += other.returnPower[k];
      product[k] += other.product[k];
      unrelated[k] += other.unrelated[k];
    }
  }

  /** How many standard deviations it stands above unrelated sound, whatever the polarity. */
  public double significance() {
    double sum = 0;
    double variance = 0;
    for (int k = 1; k < product.length; k++) {
      double powers = referencePower[k] * returnPower[k];
      if (powers > 0) {
        sum += product[k] / Math.sqrt(powers);
        variance += unrelated[k] / powers;
      }
    }
    return variance == 0 ? 0 : Math.abs(sum) / Math.sqrt(NEIGHBOURS * variance);
  }
}
