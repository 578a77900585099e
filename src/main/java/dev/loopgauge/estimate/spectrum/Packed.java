package dev.loopgauge.estimate.spectrum;

/** Arithmetic on packed spectra (see {@link RealFft} for their shape). */
public final class Packed {
  /** How many bins are turned at a time: what is called often is compiled early. */
  private static final int RUN = 64;

  private Packed() {}

  /** Adds conj(x) * y to a sum. */
  public static void accumulateCrossSpectrum(double[] x, double[] y, double[] sum) {
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
  public static void multiply(double[] x, double[] y) {
    x[0] *= y[0];
    x[1] *= y[1];
    for (int i = 2; i < x.length; i += 2) {
      double real = x[i];
      x[i] = real * y[i] - x[i + 1] * y[i + 1];
      x[i + 1] = real * y[i + 1] + x[i + 1] * y[i];
    }
  }

  /** Turns a signal back to front around lag 0, in place. */
  public static void conjugate(double[] packed) {
    for (int i = 3; i < packed.length; i += 2) {
      packed[i] = -packed[i];
    }
  }

  /**
   * Moves a signal earlier, around the ends of its transform. The bin at half the rate has no
   * direction to turn in and keeps what its cosine leaves.
   *
   * @param packed the spectrum, changed in place
   * @param samples how much earlier, negative for later
   */
  public static void fractionalDelay(double[] packed, double samples) {
    double step = 2 * Math.PI * samples / packed.length;
    for (int k = 1; k < packed.length / 2; k += RUN) {
      turn(packed, step, k, Math.min(k + RUN, packed.length / 2));
    }
    packed[1] *= Math.cos(Math.PI * samples);
  }

  private static void turn(double[] packed, double step, int from, int to) {
    Phasor phasor = new Phasor(step, from);
    for (int i = 2 * from; i < 2 * to; i += 2) {
      double real = packed[i];
      packed[i] = real * phasor.re() - packed[i + 1] * phasor.im();
      packed[i + 1] = real * phasor.im() + packed[i + 1] * phasor.re();
      phasor.next();
    }
  }

  /** Turns each bin back by a quarter, in place: the Hilbert transform. */
  public static void hilbertTransform(double[] packed) {
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
    int end = packed.length;
    for (int i = 4; i < end - 2; i++) {
      tapered[i] = packed[i] / 2 - (packed[i - 2] + packed[i + 2]) / 4;
    }
    tapered[2] = packed[2] / 2 - (packed[0] + packed[4]) / 4;
    tapered[3] = packed[3] / 2 - packed[5] / 4;
    tapered[end - 2] = packed[end - 2] / 2 - (packed[end - 4] + packed[1]) / 4;
    tapered[end - 1] = packed[end - 1] / 2 - packed[end - 3] / 4;
  }

  /** The squared magnitude of bin {@code k}, which is neither the first nor the last. */
  public static double power(double[] packed, int k) {
    return packed[2 * k] * packed[2 * k] + packed[2 * k + 1] * packed[2 * k + 1];
  }

  /** The magnitude of each bin, from 0 to half the rate. */
  static double[] magnitudes(double[] packed) {
    double[] magnitudes = powers(packed);
    for (int k = 0; k < magnitudes.length; k++) {
      magnitudes[k] = Math.sqrt(magnitudes[k]);
    }
    return magnitudes;
  }

  /** The squared magnitude of each bin, from 0 to half the rate. */
  public static double[] powers(double[] packed) {
    int half = packed.length / 2;
    double[] powers = new double[half + 1];
    powers[0] = packed[0] * packed[0];
    powers[half] = packed[1] * packed[1];
    for (int k = 1; k < half; k++) {
      powers[k] = power(packed, k);
    }
    return powers;
  }
}
