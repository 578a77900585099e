package dev.loopgauge.journal;

import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;

/**
 * A measured delay as the journal keeps it.
 *
 * @param delay the delay
 * @param uncertaintySamples its expanded uncertainty (k = 2), in samples, 0 or more
 */
public record LoggedDelay(Latency delay, double uncertaintySamples) {
  /**
   * Checks the uncertainty.
   *
   * @throws IllegalArgumentException when it is negative or not finite
   */
  public LoggedDelay {
    if (!(uncertaintySamples >= 0 && Double.isFinite(uncertaintySamples))) {
      throw new IllegalArgumentException(
          "an uncertainty must be 0 samples or more, not " + uncertaintySamples);
    }
  }

  /** The same time, counted at another rate. */
  public LoggedDelay at(SampleRate rate) {
    return rate.equals(delay.rate())
        ? this
        : new LoggedDelay(
            Latency.ofSeconds(delay.seconds(), rate),
            uncertaintySamples * rate.hertz() / delay.rate().hertz());
  }
}
