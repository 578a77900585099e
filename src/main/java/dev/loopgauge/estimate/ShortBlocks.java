package dev.loopgauge.estimate;

import dev.loopgauge.signal.SampleRate;

/**
 * Short-time spectra of reference, return and residual, and their products.
 *
 * <p>A block lasts about 0.17 s: long enough to tell a hum from the bands beside it, short enough
 * that a passing sound counts only where it was. Where the recording starts or ends within a block,
 * what it holds is taken to have gone on.
 */
final class ShortBlocks {
  private static final double SECONDS = 0.15;

  private final RealFft fft;
  private final double[] reference;
  private final double[] ret;
  private final double[] left;
  private double foundEnergy;
  private double wholePerKnown;
  private int samples;

  /** Blocks for signals of a rate. */
  ShortBlocks(SampleRate rate) {
    this.fft = new RealFft(lengthAt(rate));
    this.reference = new double[fft.length()];
    this.ret = new double[fft.length()];
    this.left = new double[fft.length()];
  }

  /** How many samples a block has at a rate, a power of two. */
  static int lengthAt(SampleRate rate) {
    return RealFft.lengthFor(rate.samplesIn(SECONDS));
  }

  /** How many samples a block has. */
  int length() {
    return fft.length();
  }

  /**
   * Takes the block that starts at {@code from} of a subtraction. A reference that ends within it
   * is followed by silence; the return goes on as far as it is known.
   */
  void load(Subtraction source, int from) {
    foundEnergy = 0;
    wholePerKnown = (double) fft.length() / source.known(from, from + fft.length());
    samples = source.known(from, Math.min(from + fft.length(), source.length()));
    for (int i = 0; i < fft.length(); i++) {
      boolean known = source.isKnown(from + i);
      double found = known ? source.found(from + i) : 0;
      reference[i] = from + i < source.length() ? source.reference(from + i) : 0;
      ret[i] = known ? source.ret(from + i) : 0;
      left[i] = ret[i] - found;
      foundEnergy += found * found;
    }
    fft.forward(reference);
    fft.forward(ret);
    fft.forward(left);
  }

  /** How many samples of it lie within the reference and are known, at least one. */
  int samples() {
    return samples;
  }

  /** The energy of the found copy. */
  double foundEnergy() {
    return foundEnergy;
  }

  /** The energy of the reference. */
  double referenceEnergy() {
    return energy(reference);
  }

  /** The energy of the residual. */
  double leftEnergy() {
    return energy(left);
  }

  /** The variance of sum reference * return, were their phases unrelated. */
  double returnProduct() {
    double sum = 0;
    for (int k = 1; k < ret.length / 2; k++) {
      sum += Packed.power(reference, k) * Packed.power(ret, k);
    }
    return wholePerKnown * sum * 2 / ((double) ret.length * ret.length);
  }

  /**
   * Adds to sums, for each bin, |reference|^2 |residual|^2, the square of that, |reference|^2, and
   * the real part of the reference's product with the return. Where a part of the block is known,
   * so much fewer of its bins are independent, and the squares count the more.
   */
  void addProducts(
      double[] withLeft, double[] squares, double[] referencePower, double[] withReturn) {
    for (int k = 1; k < withLeft.length; k++) {
      double power = Packed.power(reference, k);
      double product = wholePerKnown * power * Packed.power(left, k);
      referencePower[k] += power;
      withLeft[k] += product;
      squares[k] += wholePerKnown * product * product;
      withReturn[k] += reference[2 * k] * ret[2 * k] + reference[2 * k + 1] * ret[2 * k + 1];
    }
  }

  private double energy(double[] packed) {
    double sum = (packed[0] * packed[0] + packed[1] * packed[1]) / 2;
    for (int k = 1; k < packed.length / 2; k++) {
      sum += Packed.power(packed, k);
    }
    return sum * 2 / packed.length;
  }
}
