package dev.loopgauge.signal.filter;

/**
 * A complex number.
 *
 * @param re its real part
 * @param im its imaginary part
 */
public record Complex(double re, double im) {
  static final Complex ZERO = new Complex(0, 0);
  static final Complex ONE = new Complex(1, 0);

  /** One sample of delay as a factor, at a frequency in cycles a sample: exp(-2 pi j f). */
  static Complex oneSample(double cycles) {
    double angle = -2 * Math.PI * cycles;
    return new Complex(Math.cos(angle), Math.sin(angle));
  }

  /** The distance from 0. */
  public double magnitude() {
    return Math.hypot(re, im);
  }

  /** The angle in radians, -pi to pi. */
  public double phase() {
    return Math.atan2(im, re);
  }

  Complex plus(Complex other) {
    return new Complex(re + other.re, im + other.im);
  }

  Complex minus(Complex other) {
    return new Complex(re - other.re, im - other.im);
  }

  Complex times(double factor) {
    return new Complex(re * factor, im * factor);
  }

  Complex times(Complex other) {
    return new Complex(re * other.re - im * other.im, re * other.im + im * other.re);
  }

  /** The quotient; not a number where the other is 0. */
  Complex over(Complex other) {
    double square = other.re * other.re + other.im * other.im;
    return times(new Complex(other.re / square, -other.im / square));
  }
}
