package dev.loopgauge.estimate;

/** Arithmetic on packed spectra (see {@link RealFft} for their shape). */
final class Packed {
  private Packed() {}

  /** Adds conj(x) * y to a sum. */
  static void addCross(double[] x, double[] y, double[] sum) {
    sum[0] += x[0] * y[0];
    sum[1] += x[1] * y[1];
    for (int i = 2; i < sum.length; i += 2) {
      sum[i] += x[i] * y[i] + x[i + 1] * y[i + 1];
      sum[i + 1] += x[i] * y[i + 1] - x[i + 1] * y[i];
    }
  }

  /** Adds another spectrum times a factor to a sum. */
  static void add(double factor, double[] x, double[] sum) {
    for (int i = 0; i < sum.length; i++) {
      sum[i] += factor * x[i];
    }
  }

  /** Multiplies {@code x} by {@code y} in place: convolution around the ends of the transform. */
  static void multiply(double[] x, double[] y) {
    x[0] *= y[0];
    x[1] *= y[1];
    for (int i = 2; i < x.length; i += 2) {
      double real = x[i];
      x[i] = real * y[i] - x[i + 1] * y[i + 1];
      x[i + 1] = real * y[i + 1] + x[i + 1] * y[i];
    }
  }

  /**
   * Moves a signal earlier, around the ends of its transform. The bin at half the rate has no
   * direction to turn in and keeps what its cosine leaves.
   *
   * @param packed the spectrum, changed in place
   * @param samples how much earlier, negative for later
   */
  static void advance(double[] packed, double samples) {
    Phasor phasor = new Phasor(2 * Math.PI * samples / packed.length, 1);
    for (int i = 2; i < packed.length; i += 2) {
      double real = packed[i];
      packed[i] = real * phasor.re() - packed[i + 1] * phasor.im();
      packed[i + 1] = real * phasor.im() + packed[i + 1] * phasor.re();
      phasor.next();
    }
    packed[1] *= Math.cos(Math.PI * samples);
  }

  /** Turns each bin back by a quarter, in place: the Hilbert transform. */
  static void turnBack(double[] packed) {
    packed[0] = 0;
    packed[1] = 0;
    for (int i = 2; i < packed.length; i += 2) {
      double real = packed[i];
      packed[i] = packed[i + 1];
      packed[i + 1] = -real;
    }
  }

  /**
   * The bins from 1 to before the last of the same signal under Hann's window, which is half of
   * each bin less a quarter of either neighbour.
   */
  static void taper(double[] packed, double[] tapered) {
    int last = packed.length / 2 - 1;
    for (int k = 1; k <= last; k++) {
      double re =
          packed[2 * k] - (packed[2 * k - 2] + (k < last ? packed[2 * k + 2] : packed[1])) / 2;
      double before = k > 1 ? packed[2 * k - 1] : 0;
      double after = k < last ? packed[2 * k + 3] : 0;
      tapered[2 * k] = re / 2;
      tapered[2 * k + 1] = (packed[2 * k + 1] - (before + after) / 2) / 2;
    }
  }

  /** The squared magnitude of bin {@code k}, which is neither the first nor the last. */
  static double power(double[] packed, int k) {
    return packed[2 * k] * packed[2 * k] + packed[2 * k + 1] * packed[2 * k + 1];
  }

  /** The magnitude of each bin, from 0 to half the rate. */
  static double[] magnitudes(double[] packed) {
    int half = packed.length / 2;
    double[] magnitudes = new double[half + 1];
    magnitudes[0] = Math.abs(packed[0]);
    magnitudes[half] = Math.abs(packed[1]);
    for (int k = 1; k < half; k++) {
      magnitudes[k] = Math.sqrt(power(packed, k));
    }
    return magnitudes;
  }

  /** The squared magnitude of each bin, from 0 to half the rate. */
  static double[] powers(double[] packed) {
    double[] powers = magnitudes(packed);
    for (int k = 0; k < powers.length; k++) {
      powers[k] *= powers[k];
    }
    return powers;
  }
}
