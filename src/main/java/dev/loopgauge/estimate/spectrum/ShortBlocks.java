package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.signal.SampleRate;
import java.util.Arrays;

/**
 * Short-time spectra of reference, return and residual, and their products.
 *
 * <p>A block lasts about 0.17 s: long enough to tell a hum from the bands beside it, short enough
 * that a passing sound counts only where it was. Where the recording starts or ends within a block,
 * what it holds is taken to have gone on.
 */
public final class ShortBlocks {
  private static final double SECONDS = 0.15;

  private final RealFft fft;
  private final double[] cosines;
  private final double[] sines;
  private final double[] reference;
  private final double[] ret;
  private final double[] residual;
  private final double[] taperedReference;
  private final double[] taperedReturn;
  private double referenceEnergy;
  private double returnEnergy;
  private double residualEnergy;
  private double wholePerKnown;
  private int samples;

  /**
   * Blocks of a subtraction.
   *
   * @param fft a transform of a block's length
   * @param late by what part of a sample the return is later than the reference beside it
   */
  public ShortBlocks(RealFft fft, double late) {
    this.fft = fft;
    this.cosines = new double[fft.length() / 2];
    this.sines = new double[fft.length() / 2];
    for (int k = 0; k < cosines.length; k++) {
      cosines[k] = Math.cos(2 * Math.PI * late * k / fft.length());
      sines[k] = Math.sin(2 * Math.PI * late * k / fft.length());
    }
    this.reference = new double[fft.length()];
    this.ret = new double[fft.length()];
    this.residual = new double[fft.length()];
    this.taperedReference = new double[fft.length()];
    this.taperedReturn = new double[fft.length()];
  }

  /** How many samples a block has at a rate, a power of two. */
  public static int lengthAt(SampleRate rate) {
    return RealFft.lengthFor(rate.samplesIn(SECONDS));
  }

  /** How many samples a block has. */
  public int length() {
    return fft.length();
  }

  /**
   * Takes the block that starts at {@code from} of a subtraction. A reference that ends within it
   * is followed by silence; the return goes on as far as it is known.
   */
  public void load(Subtraction source, int from) {
    int to = from + fft.length();
    wholePerKnown = (double) fft.length() / source.known(from, to);
    samples = source.known(from, Math.min(to, source.length()));
    int first = source.firstKnown(from, to);
    int known = source.endKnown(from, to) - first;
    Arrays.fill(reference, 0);
    Arrays.fill(ret, 0);
    Arrays.fill(residual, 0);
    source.copyReference(from, reference, 0, Math.min(fft.length(), source.length() - from));
    source.copyReturn(first, ret, first - from, known);
    source.copyResidual(first, residual, first - from, known);
    boolean partly = wholePerKnown > 1;
    if (partly) {
      taperKnown(first - from, known);
    }
    referenceEnergy = Loudness.energy(reference);
    returnEnergy = Loudness.energy(ret);
    residualEnergy = Loudness.energy(residual);
    fft.forward(reference);
    fft.forward(ret);
    fft.forward(residual);
    if (!partly) {
      Packed.taper(reference, taperedReference);
      Packed.taper(ret, taperedReturn);
    }
  }

  /**
   * Where a part of the block is known, that is what the taper fades in and out: sound that is cut
   * off at the same moment in both would look alike in all frequencies.
   */
  private void taperKnown(int first, int known) {
    Arrays.fill(taperedReference, 0);
    Arrays.fill(taperedReturn, 0);
    for (int i = first; i < first + known; i++) {
      double gain = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i - first + 0.5) / known);
      taperedReference[i] = gain * reference[i];
      taperedReturn[i] = gain * ret[i];
    }
    fft.forward(taperedReference);
    fft.forward(taperedReturn);
  }

  /** How many samples of it lie within the reference and are known, at least one. */
  public int samples() {
    return samples;
  }

  /** The energy of the reference. */
  public double referenceEnergy() {
    return referenceEnergy;
  }

  /** The energy of the return. */
  public double returnEnergy() {
    return returnEnergy;
  }

  /** The energy of the residual. */
  public double residualEnergy() {
    return residualEnergy;
  }

  /** The power of the reference in a bin, which is neither the first nor the last. */
  public double referencePower(int k) {
    return Packed.power(reference, k);
  }

  /** The power of the return in a bin. */
  public double returnPower(int k) {
    return Packed.power(ret, k);
  }

  /** The power of the residual in a bin. */
  public double residualPower(int k) {
    return Packed.power(residual, k);
  }

  /** The real part of a bin of the return times that of the reference, both aligned. */
  public double product(int k) {
    return product(reference, ret, k);
  }

  /** The bins of the reference as Hann's window leaves them. */
  public double[] taperedReference() {
    return taperedReference;
  }

  /** The bins of the return as Hann's window leaves them. */
  public double[] taperedReturn() {
    return taperedReturn;
  }

  /** The real part of a bin of a return times that of a reference, once both are aligned. */
  public double product(double[] x, double[] y, int k) {
    double re = x[2 * k] * y[2 * k] + x[2 * k + 1] * y[2 * k + 1];
    double im = x[2 * k] * y[2 * k + 1] - x[2 * k + 1] * y[2 * k];
    return re * cosines[k] - im * sines[k];
  }

  /** How many times more samples the block has than are known. */
  public double wholePerKnown() {
    return wholePerKnown;
  }
}
