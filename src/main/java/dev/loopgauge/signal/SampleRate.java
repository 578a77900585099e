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

  /** The number of whole samples nearest to a duration; {@code seconds} may be negative. */
  public int samplesIn(double seconds) {
    return Math.toIntExact(Math.round(seconds * hertz));
  }
}
