package dev.loopgauge.signal.filter;

/**
 * A section of second order: y(n) = b0 x(n) + b1 x(n-1) + b2 x(n-2) - a1 y(n-1) - a2 y(n-2). Where
 * {@code b2} and {@code a2} are 0 it is one of first order.
 *
 * @param b0 the weight of the newest input
 * @param b1 the weight of the input before
 * @param b2 the weight of the input two before
 * @param a1 the weight of the last output, taken off
 * @param a2 the weight of the output before that, taken off
 */
public record Biquad(double b0, double b1, double b2, double a1, double a2) implements Filter {
  /** Changes the level alone, by a factor; a negative one inverts. */
  static Biquad gain(double factor) {
    return new Biquad(factor, 0, 0, 0, 0);
  }

  /** Transposed direct form II, in {@code double}. */
  @Override
  public double[] on(double[] sound) {
    double[] out = new double[sound.length];
    double next = 0;
    double afterNext = 0;
    for (int i = 0; i < out.length; i++) {
      out[i] = b0 * sound[i] + next;
      next = b1 * sound[i] - a1 * out[i] + afterNext;
      afterNext = b2 * sound[i] - a2 * out[i];
    }
    return out;
  }

  @Override
  public Complex response(double cycles) {
    return polynomial(b0, b1, b2, cycles).over(polynomial(1, a1, a2, cycles));
  }

  /** The quotient rule; the slope of a polynomial weighs each term by its number of samples. */
  @Override
  public Complex slope(double cycles) {
    Complex below = polynomial(1, a1, a2, cycles);
    Complex above = polynomial(0, b1, 2 * b2, cycles);
    Complex fall = response(cycles).times(polynomial(0, a1, 2 * a2, cycles));
    return above.minus(fall).over(below);
  }

  private static Complex polynomial(double c0, double c1, double c2, double cycles) {
    Complex z = Complex.oneSample(cycles);
    return new Complex(c0, 0).plus(z.times(c1)).plus(z.times(z).times(c2));
  }
}
