package dev.loopgauge.verify;

import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;

/**
 * A delay as a host or plug-in states it.
 *
 * @param samples the delay, 0 or more
 * @param roundingSamples how far off the statement may be by its rounding alone, either way
 */
public record ReportedDelay(double samples, double roundingSamples) {
  /** Hosts count whole samples. */
  private static final double HALF_A_SAMPLE = 0.5;

  /**
   * Checks the range.
   *
   * @throws IllegalArgumentException when the delay is negative or either is not a number
   */
  public ReportedDelay {
    if (!(samples >= 0 && Double.isFinite(samples) && Double.isFinite(roundingSamples))) {
      throw new IllegalArgumentException(
          "a reported delay must be 0 samples or more, not " + samples);
    }
  }

  /** Stated in samples: whole ones, if more digits are not given. */
  public static ReportedDelay ofSamples(double samples) {
    return new ReportedDelay(samples, HALF_A_SAMPLE);
  }

  /** Stated in ms, and rounded to the last digit that is given: 5.9 may be 5.85 to 5.95. */
  public static ReportedDelay ofMs(BigDecimal ms, SampleRate rate) {
    double perMs = rate.hertz() / 1000.0;
    double halfStep = BigDecimal.ONE.movePointLeft(Math.max(0, ms.scale())).doubleValue() / 2;
    return new ReportedDelay(ms.doubleValue() * perMs, Math.max(HALF_A_SAMPLE, halfStep * perMs));
  }
}
