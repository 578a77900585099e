package dev.loopgauge.signal;

/**
 * How many samples a second a digital signal has.
 *
 * @param hertz samples a second, {@value #LOWEST} to {@value #HIGHEST}
 */
public record SampleRate(int hertz) {
  /** The lowest rate accepted, in Hz: telephone speech (ITU-T G.711). */
  public static final int LOWEST = 8_000;

  /** The highest rate accepted, in Hz: sixteen times 48 kHz, above any converter in stage use. */
  public static final int HIGHEST = 768_000;

  /**
   * Checks the range.
   *
   * @throws IllegalArgumentException when out of range
   */
  public SampleRate {
    if (hertz < LOWEST || hertz > HIGHEST) {
      throw new IllegalArgumentException(
          "sample rate must be " + LOWEST + " to " + HIGHEST + " Hz, not " + hertz);
    }
  }

  /** The highest frequency that this rate can carry, in Hz: half the rate. */
  public double nyquistHz() {
    return hertz / 2.0;
  }

  /**
   * The number of whole samples nearest to a duration.
   *
   * @param seconds the duration, negative too
   * @throws IllegalArgumentException when it is not a number, or more samples than an {@code int}
   *     holds
   */
  public int samplesIn(double seconds) {
    double samples = seconds * hertz;
    if (!(Math.abs(samples) < Integer.MAX_VALUE)) {
      throw new IllegalArgumentException(
          seconds + " s at " + hertz + " Hz is not a number of samples that can be counted");
    }
    return (int) Math.round(samples);
  }

  // Written out, since what a record has of its own the JVM makes at each start, which takes it a
  // fiftieth of a second, and rates are compared in every run.
  @Override
  public boolean equals(Object other) {
    return other instanceof SampleRate rate && rate.hertz == hertz;
  }

  @Override
  public int hashCode() {
    return hertz;
  }
}
