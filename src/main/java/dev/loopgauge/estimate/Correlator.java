package dev.loopgauge.estimate;

import java.util.Arrays;

/**
 * Correlates readings block by block. Its arrays are used again for each block, and each block of a
 * reference is transformed once for both its return and itself.
 */
final class Correlator {
  private final BlockPlan plan;
  private final RealFft fft;
  private final int lowestBin;
  private final double[] block;
  private final double[] around;
  private final double[] auto;

  /**
   * A correlator.
   *
   * @param fft a transform of the plan's length
   * @param lowestBin what lies in bins below it is left out
   */
  Correlator(BlockPlan plan, RealFft fft, int lowestBin) {
    this.plan = plan;
    this.fft = fft;
    this.lowestBin = lowestBin;
    this.block = new double[plan.transform()];
    this.around = new double[plan.transform()];
    this.auto = new double[plan.transform()];
  }

  /** Correlates some blocks of a reading; its return's share is given, its own kept. */
  CrossSpectrum add(Reading reading, int firstBlock, int endBlock) {
    double[] cross = new double[plan.transform()];
    for (int i = firstBlock; i < endBlock; i++) {
      int from = i * plan.advance();
      reading.reference().copyTo(from - plan.maxLag(), around, 0, plan.transform());
      int taken = Math.min(plan.advance(), reading.reference().length() - from);
      System.arraycopy(around, plan.maxLag(), block, 0, taken);
      Arrays.fill(block, taken, block.length, 0);
      fft.forward(block);
      fft.forward(around);
      Packed.addCross(block, around, auto);
      reading.ret().copyTo(from - plan.maxLag(), around, 0, plan.transform());
      fft.forward(around);
      Packed.addCross(block, around, cross);
    }
    return spectrum(cross);
  }

  /** The references' correlation with themselves, summed over all blocks so far. */
  CrossSpectrum auto() {
    return spectrum(auto);
  }

  private CrossSpectrum spectrum(double[] packed) {
    if (lowestBin > 0) {
      packed[0] = 0;
      Arrays.fill(packed, 2, 2 * lowestBin, 0);
    }
    return new CrossSpectrum(plan, fft, packed);
  }
}
