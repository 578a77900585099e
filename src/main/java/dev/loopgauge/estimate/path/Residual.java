package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.ShortBlocks;

/**
 * What the return holds besides the found arrival, and what that means for the delay.
 *
 * <p>The delay read off a correlation R errs by R'noise / R''. Reference and noise are unrelated,
 * so in each short block and bin their product has a random phase, and the variances are sums over
 * all blocks and bins: of |X|^2 |E|^2 for R and of w^2 |X|^2 |E|^2 for R'. For white noise of
 * variance s^2 this comes to s^2 sum (dx/dn)^2, and the delay's variance to the Cramer-Rao bound
 * s^2 / sum (dx/dn)^2 (S. M. Kay, "Estimation Theory", example 3.13, from memory); coloured noise,
 * hum and passing sounds are weighed by where and when they meet the reference.
 */
public final class Residual {
  /** The least share of the samples that counts as free of the fitted filter. */
  private static final double LEAST_FREE = 0.2;

  private final int taps;
  private final double[] withResidual;
  private final double[] squares;
  private final double[] referencePower;
  private final double[] withReturn;
  private double unrelated;
  private double returnEnergy;
  private double residualEnergy;
  private double blockEnergies;
  private double squaredEnergiesPerSample;

  /**
   * A residual to which blocks are still to be added.
   *
   * @param blockLength how many samples each short block has
   * @param taps how many taps the found arrival was fitted with
   */
  Residual(int blockLength, int taps) {
    this.taps = taps;
    this.withResidual = new double[blockLength / 2];
    this.squares = new double[blockLength / 2];
    this.referencePower = new double[blockLength / 2];
    this.withReturn = new double[blockLength / 2];
  }

  /** Adds one short block. */
  void add(ShortBlocks blocks) {
    for (int k = 1; k < withResidual.length; k++) {
      addBin(blocks, k);
    }
    returnEnergy += blocks.returnEnergy();
    residualEnergy += blocks.residualEnergy();
    double energy = blocks.referenceEnergy();
    blockEnergies += energy;
    squaredEnergiesPerSample += energy * energy / blocks.samples();
  }

  /**
   * Adds one bin. Where a part of the block is known, so much fewer of its bins are independent,
   * and products count the more.
   */
  private void addBin(ShortBlocks blocks, int k) {
    double reference = blocks.referencePower(k);
    double product = blocks.wholePerKnown() * reference * blocks.residualPower(k);
    referencePower[k] += reference;
    withResidual[k] += product;
    squares[k] += blocks.wholePerKnown() * product * product;
    withReturn[k] += blocks.product(k);
    unrelated += blocks.wholePerKnown() * reference * blocks.returnPower(k);
  }

  /** Adds what is left of another part of the return. */
  void add(Residual other) {
    for (int k = 0; k < withResidual.length; k++) {
      withResidual[k] += other.withResidual[k];
      squares[k] += other.squares[k];
      referencePower[k] += other.referencePower[k];
      withReturn[k] += other.withReturn[k];
    }
    unrelated += other.unrelated;
    returnEnergy += other.returnEnergy;
    residualEnergy += other.residualEnergy;
    blockEnergies += other.blockEnergies;
    squaredEnergiesPerSample += other.squaredEnergiesPerSample;
  }

  /** The variance that R would have if reference and return were unrelated. */
  public double unrelatedVariance() {
    return unrelated / (2.0 * bins() * bins());
  }

  /**
   * What share of the return stays unexplained: of its energy, or of that where the reference has
   * its own, whichever is more.
   */
  public double unexplained() {
    double within = valueVariance(1, bins()) / unrelatedVariance();
    return Math.max(within, residualEnergy / returnEnergy);
  }

  /** How many bins carry what the two have in common: a hum in both is carried by a few. */
  public double effectiveBins() {
    double sum = 0;
    double squares = 0;
    for (double share : withReturn) {
      sum += share;
      squares += share * share;
    }
    return squares == 0 ? 0 : sum * sum / squares;
  }

  /** The energy left of the return while the reference lasts. */
  public double residualEnergy() {
    return residualEnergy;
  }

  /** How many bins the spectra have; bin k lies at k pi / bins radians a sample. */
  public int bins() {
    return withResidual.length;
  }

  /** The bin after the last one in the usable part of the band. */
  int usableBins() {
    return (int) (CrossSpectrum.USABLE * bins());
  }

  /** The reference's share of R at lag 0 in the bins from {@code from} to before {@code to}. */
  public double power(int from, int to) {
    return moment(0, from, to, 0);
  }

  /** The same weighed by the squared distance from a centre frequency, radians a sample. */
  double secondMoment(double centre, int from, int to) {
    return moment(centre, from, to, 2);
  }

  /** The centre of the reference's power in a range of bins, radians a sample. */
  double centre(int from, int to) {
    return moment(0, from, to, 1) / power(from, to);
  }

  private double moment(double centre, int from, int to, int order) {
    double sum = 0;
    for (int k = from; k < to; k++) {
      double distance = Math.PI * k / bins() - centre;
      double weight = order == 0 ? 1 : order == 1 ? distance : distance * distance;
      sum += weight * referencePower[k];
    }
    return sum / bins();
  }

  /**
   * The power that noise gives the fitted filter around a bin, over as many bins as it can't tell
   * apart: for each tap the noise's density over the reference's energy there (L. Ljung, "System
   * Identification", section 9.4, from memory). Not a number where there is no reference.
   */
  double filterNoise(int bin) {
    int alike = Math.max(1, 2 * bins() / taps);
    int from = Math.max(1, bin - alike);
    int to = Math.min(bins(), bin + alike + 1);
    double products = 0;
    double power = 0;
    for (int k = from; k < to; k++) {
      products += withResidual[k];
      power += referencePower[k];
    }
    return products / power * taps / (2.0 * bins()) * (to - from) / power;
  }

  /** The variance of R. */
  public double valueVariance() {
    return valueVariance(1, usableBins());
  }

  /** The variance of the share of R that comes from a range of bins. */
  public double valueVariance(int from, int to) {
    double sum = 0;
    for (int k = from; k < to; k++) {
      sum += withResidual[k];
    }
    return scaled(sum);
  }

  /**
   * The variance of the share of R' that comes from a range of bins, phases counted from a centre
   * frequency in radians a sample.
   */
  double slopeVariance(double centre, int from, int to) {
    double sum = 0;
    for (int k = from; k < to; k++) {
      double distance = Math.PI * k / bins() - centre;
      sum += distance * distance * withResidual[k];
    }
    return scaled(sum);
  }

  /**
   * The degrees of freedom of that variance. Its terms are powers of noise, with two degrees of
   * freedom each, so that their squares are on average twice the square of their mean (B. L. Welch,
   * "The generalization of Student's problem", Biometrika 34, 1947, and JCGM 100:2008, G.4.1, from
   * memory; derived for such terms).
   */
  double slopeDegrees(double centre, int from, int to) {
    double sum = 0;
    double ofSquares = 0;
    for (int k = from; k < to; k++) {
      double distance = Math.PI * k / bins() - centre;
      double weight = distance * distance;
      sum += weight * withResidual[k];
      ofSquares += weight * weight * squares[k];
    }
    return ofSquares == 0 ? Double.POSITIVE_INFINITY : 4 * sum * sum / ofSquares / forFit();
  }

  private double scaled(double sum) {
    return sum * forFit() / (2.0 * bins() * bins());
  }

  /**
   * A fitted filter follows some of the noise, one degree of freedom for each tap; the noise that
   * met the reference is that much larger than what is left.
   */
  private double forFit() {
    double samples = blockEnergies * blockEnergies / squaredEnergiesPerSample;
    return 1 / Math.max(LEAST_FREE, 1 - taps / samples);
  }
}
