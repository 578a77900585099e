package dev.loopgauge.signal.filter;

import dev.loopgauge.signal.SampleRate;

/**
 * An analogue section, a fraction of polynomials in s, with its corner at 1 radian a second. The
 * bilinear transform makes it digital, bent so that the corner lies where it shall: s = (1 - z) /
 * (k (1 + z)), z one sample of delay, k = tan(pi corner / rate).
 *
 * <p>Source: A. V. Oppenheim and R. W. Schafer, "Discrete-Time Signal Processing", the bilinear
 * transform (from memory; tests compare it with SciPy).
 */
sealed interface Prototype {
  /** Corners that are allowed, in Hz: from the lowest to half the highest sample rate. */
  double LOWEST_HZ = 1;

  double HIGHEST_HZ = SampleRate.HIGHEST / 2.0;

  /** The digital section, k being the corner's tangent. */
  Biquad at(double k);

  /** With s and 1 / s exchanged: a low-pass becomes a high-pass with the same corner. */
  Prototype mirrored();

  /**
   * The digital section with its corner at a frequency.
   *
   * @throws IllegalArgumentException when that isn't below half the rate
   */
  default Biquad at(double hertz, SampleRate rate) {
    if (!(hertz < rate.nyquistHz())) {
      throw new IllegalArgumentException(
          "a corner at "
              + hertz
              + " Hz lies at or above half the sample rate, "
              + rate.nyquistHz()
              + " Hz");
    }
    return at(Math.tan(Math.PI * hertz / rate.hertz()));
  }

  /** (b1 s + b0) / (a1 s + a0). */
  record First(double b1, double b0, double a1, double a0) implements Prototype {
    @Override
    public Biquad at(double k) {
      double a = a1 + a0 * k;
      return new Biquad((b1 + b0 * k) / a, (b0 * k - b1) / a, 0, (a0 * k - a1) / a, 0);
    }

    @Override
    public Prototype mirrored() {
      return new First(b0, b1, a0, a1);
    }
  }

  /** (b2 s^2 + b1 s + b0) / (a2 s^2 + a1 s + a0). */
  record Second(double b2, double b1, double b0, double a2, double a1, double a0)
      implements Prototype {
    @Override
    public Biquad at(double k) {
      double a = a2 + a1 * k + a0 * k * k;
      return new Biquad(
          (b2 + b1 * k + b0 * k * k) / a,
          2 * (b0 * k * k - b2) / a,
          (b2 - b1 * k + b0 * k * k) / a,
          2 * (a0 * k * k - a2) / a,
          (a2 - a1 * k + a0 * k * k) / a);
    }

    @Override
    public Prototype mirrored() {
      return new Second(b0, b1, b2, a0, a1, a2);
    }
  }
}
