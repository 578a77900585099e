package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.Samples;
import java.util.Arrays;
import java.util.Optional;

/**
 * Correlates readings block by block. Its arrays are used again for each block, and each block of a
 * reference is transformed once for both its return and itself.
 */
final class Correlator implements AutoCloseable {
  private final BlockPlan plan;
  private final RealFft fft;
  private final int lowestBin;
  private final Optional<KeptTransforms> kept;
  private final boolean sumsAuto;
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
    this(plan, fft, lowestBin, Optional.empty(), true);
  }

  /**
   * A correlator that may know the references.
   *
   * @param kept where their transforms are kept
   * @param sumsAuto whether it sums their correlation with themselves
   */
  Correlator(
      BlockPlan plan, RealFft fft, int lowestBin, Optional<KeptTransforms> kept, boolean sumsAuto) {
    this.plan = plan;
    this.fft = fft;
    this.lowestBin = lowestBin;
    this.kept = kept;
    this.sumsAuto = sumsAuto;
    this.block = fft.borrow();
    this.around = fft.borrow();
    this.auto = new double[sumsAuto ? plan.transform() : 0];
  }

  /** Correlates some blocks of a reading; its return's share is given, its own kept. */
  CrossSpectrum add(Reading reading, int firstBlock, int endBlock) {
    double[] cross = new double[plan.transform()];
    for (int i = firstBlock; i < endBlock; i++) {
      double[] sent = sent(reading, i);
      if (sumsAuto) {
        addAround(reading.reference(), i, sent, auto);
      }
      addAround(reading.ret(), i, sent, cross);
    }
    return spectrum(cross);
  }

  private double[] sent(Reading reading, int index) {
    return kept.isEmpty()
        ? transformed(reading, index, block)
        : kept.get()
            .block(
                reading.reference(),
                index,
                plan,
                () -> transformed(reading, index, new double[plan.transform()]));
  }

  private double[] transformed(Reading reading, int index, double[] target) {
    int from = index * plan.advance();
    int taken = Math.min(plan.advance(), reading.reference().length() - from);
    reading.reference().copyTo(from, target, 0, taken);
    Arrays.fill(target, taken, target.length, 0);
    fft.forward(target);
    return target;
  }

  private void addAround(Samples samples, int index, double[] sent, double[] sum) {
    samples.copyTo(index * plan.advance() - plan.maxLag(), around, 0, plan.transform());
    fft.forward(around);
    Packed.accumulateCrossSpectrum(sent, around, sum);
  }

  /** The references' correlation with themselves, summed over all blocks so far, if it sums it. */
  Optional<CrossSpectrum> auto() {
    return sumsAuto ? Optional.of(spectrum(auto)) : Optional.empty();
  }

  /** Gives the arrays back that it worked in. */
  @Override
  public void close() {
    fft.giveBack(block);
    fft.giveBack(around);
  }

  private CrossSpectrum spectrum(double[] packed) {
    if (lowestBin > 0) {
      packed[0] = 0;
      Arrays.fill(packed, 2, 2 * lowestBin, 0);
    }
    return new CrossSpectrum(plan, fft, packed);
  }
}
