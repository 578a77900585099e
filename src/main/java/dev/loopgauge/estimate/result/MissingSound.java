package dev.loopgauge.estimate.result;

import java.util.Locale;

/**
 * Sound that the return lacks.
 *
 * @param atSeconds when it is missing from, in seconds from the start of the recording, 0 or more
 * @param ms how long it is missing for, in ms, above 0
 */
public record MissingSound(double atSeconds, double ms) {
  /**
   * Checks both figures.
   *
   * @throws IllegalArgumentException when one is out of range or not finite
   */
  public MissingSound {
    Finite.check("a time", atSeconds);
    Finite.check("a length", ms);
    if (atSeconds < 0 || ms <= 0) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "missing sound starts at 0 s or later and lasts, not %s s and %s ms",
              atSeconds,
              ms));
    }
  }
}
