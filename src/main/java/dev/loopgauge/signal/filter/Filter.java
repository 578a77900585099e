package dev.loopgauge.signal.filter;

/**
 * A linear filter that doesn't change with time and never answers before it is asked. Frequencies
 * are in cycles a sample, 0 to 0.5: Hz over the sample rate.
 */
public sealed interface Filter permits Biquad, Cascade, Parallel {
  /** The sound after the filter, from rest; as long as before, the rest of the decay is cut off. */
  double[] on(double[] sound);

  /** What the filter makes of a steady tone: its gain as magnitude, its lead as phase. */
  Complex response(double cycles);

  /**
   * The response's slope j dH/dw, w in radians a sample: the transform of the impulse response
   * times the sample's number.
   */
  Complex slope(double cycles);

  /**
   * The group delay -d(phase)/dw in samples, as the real part of slope over response; not a number
   * where the filter passes nothing at all, such as a high-pass at 0 Hz.
   *
   * <p>Source: J. O. Smith, "Introduction to Digital Filters with Audio Applications", W3K 2007,
   * numerical computation of group delay (from memory; tests compare it with the phase's
   * differences and with SciPy).
   */
  default double groupDelay(double cycles) {
    return slope(cycles).over(response(cycles)).re();
  }
}
