package dev.loopgauge.estimate;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * What the return holds besides the found copy, and what that means for the delay.
 *
 * <p>The delay read off a correlation R errs by R'noise / R''. Reference and noise are unrelated,
 * so in each short block and bin their product has a random phase, and the variances are sums over
 * all blocks and bins: of |X|^2 |E|^2 for R and of w^2 |X|^2 |E|^2 for R'. For white noise of
 * variance s^2 this comes to s^2 sum (dx/dn)^2, and the delay's variance to the Cramer-Rao bound
 * s^2 / sum (dx/dn)^2 (S. M. Kay, "Estimation Theory", example 3.13, from memory); coloured noise,
 * hum and passing sounds are weighed by where and when they meet the reference.
 */
final class Residual {
  private final List<Slice> slices = new ArrayList<>();
  private double unrelatedVariance;
  private double valueVariance;
  private double slopeVariance;

  /**
   * One short block of a reading.
   *
   * @param from the reference sample it starts at
   * @param reference the energy of the reference in it
   * @param found the energy of the found copy
   * @param left the energy of what is left of the return
   */
  record Slice(int from, double reference, double found, double left) {}

  private Residual() {}

  /** Subtracts the found copy from the return of a reading and weighs what is left. */
  static Residual of(Reading reading, BlockPlan plan, PathResponse response) {
    Residual residual = new Residual();
    Subtraction subtraction = new Subtraction(reading, plan, response);
    ShortBlocks blocks = new ShortBlocks(reading.rate());
    for (int block = 0; block < plan.blocks(reading.reference().length()); block++) {
      subtraction.run(block);
      for (int from = 0; from < subtraction.length(); from += blocks.length()) {
        blocks.load(subtraction, from);
        residual.add(blocks, block * plan.advance() + from);
      }
    }
    residual.correctForFit(blocks.length(), response.taps().length);
    return residual;
  }

  private void add(ShortBlocks blocks, int from) {
    unrelatedVariance += blocks.returnProduct();
    valueVariance += blocks.leftProduct();
    slopeVariance += blocks.leftSlopeProduct();
    slices.add(
        new Slice(from, blocks.referenceEnergy(), blocks.foundEnergy(), blocks.leftEnergy()));
  }

  /**
   * A fitted filter follows some of the noise, one degree of freedom for each tap; the noise that
   * met the reference is that much larger than what is left.
   */
  private void correctForFit(int blockLength, int taps) {
    double sum = 0;
    double squares = 0;
    for (Slice slice : slices) {
      sum += slice.reference();
      squares += slice.reference() * slice.reference();
    }
    double samples = squares == 0 ? 0 : blockLength * sum * sum / squares;
    double factor = samples > 2 * taps ? samples / (samples - taps) : 2;
    valueVariance *= factor;
    slopeVariance *= factor;
  }

  /** The variance that R would have if reference and return were unrelated. */
  double unrelatedVariance() {
    return unrelatedVariance;
  }

  /** The variance of R. */
  double valueVariance() {
    return valueVariance;
  }

  /** The variance of R'. */
  double slopeVariance() {
    return slopeVariance;
  }

  /** The short blocks in their order. */
  List<Slice> slices() {
    return Collections.unmodifiableList(slices);
  }

  /** The energy left of the return while the reference lasts. */
  double leftEnergy() {
    return slices.stream().mapToDouble(Slice::left).sum();
  }
}
