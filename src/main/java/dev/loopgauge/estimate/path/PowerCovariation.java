package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.estimate.spectrum.Subtraction;
import java.util.Arrays;

/**
 * Whether residual power rises with reference power, as when a drum falls on a consonant: by how
 * much their product in pieces of about 10 ms exceeds what it would be, were each spread evenly
 * over its short block. {@link Residual} takes them to be so spread (derived: the variance of R' is
 * a sum of |X|^2 |E|^2 over pieces as well as over blocks).
 *
 * <p>Pieces are tapered by Hann's window, so that low tones don't leak into what is above them.
 */
public final class PowerCovariation {
  /** How many pieces a short block has. */
  static final int PIECES = 16;

  private final RealFft fft;
  private final double[] taper;
  private final double[] reference;
  private final double[] residual;
  private final double[] referencePower;
  private final double[] residualPower;
  private double together;
  private double spread;

  /**
   * A covariation within short blocks.
   *
   * @param fft a transform of a piece's length
   */
  PowerCovariation(RealFft fft) {
    this.fft = fft;
    this.taper = new double[fft.length()];
    for (int i = 0; i < taper.length; i++) {
      taper[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / taper.length);
    }
    this.reference = new double[fft.length()];
    this.residual = new double[fft.length()];
    this.referencePower = new double[fft.length() / 2];
    this.residualPower = new double[fft.length() / 2];
  }

  /** Adds the block that starts at {@code from} of a subtraction, as far as it is known. */
  void add(Subtraction source, int from) {
    Arrays.fill(referencePower, 0);
    Arrays.fill(residualPower, 0);
    int pieces = 0;
    for (int i = 0; i < PIECES; i++) {
      int start = from + i * taper.length;
      int end = start + taper.length;
      if (end <= source.length() && source.known(start, end) == taper.length) {
        addPiece(source, start);
        pieces++;
      }
    }
    for (int k = 1; k < residualPower.length && pieces > 0; k++) {
      spread += (double) k * k * referencePower[k] * residualPower[k] / pieces;
    }
  }

  private void addPiece(Subtraction source, int start) {
    source.copyReference(start, reference, 0, taper.length);
    source.copyResidual(start, residual, 0, taper.length);
    for (int i = 0; i < taper.length; i++) {
      reference[i] *= taper[i];
      residual[i] *= taper[i];
    }
    fft.forward(reference);
    fft.forward(residual);
    addPowers();
  }

  private void addPowers() {
    for (int k = 1; k < residualPower.length; k++) {
      double x = Packed.power(reference, k);
      double e = Packed.power(residual, k);
      together += (double) k * k * x * e;
      referencePower[k] += x;
      residualPower[k] += e;
    }
  }

  /** Adds the blocks of another part of the return. */
  void add(PowerCovariation other) {
    together += other.together;
    spread += other.spread;
  }

  /** How many times larger the variance of R' is than spread evenly, at least 1. */
  public double factor() {
    return spread == 0 ? 1 : Math.max(1, together / spread);
  }
}
