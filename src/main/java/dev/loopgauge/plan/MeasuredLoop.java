package dev.loopgauge.plan;

import dev.loopgauge.signal.Latency;
import java.util.Optional;

/**
 * The loop of a path as it was measured.
 *
 * @param delay its delay, at any sample rate
 * @param uncertaintySamples the expanded uncertainty of that, k = 2, in samples, 0 or more
 * @param state in which state of the show, such as before or after, where that is known
 * @param taken when, as a date and time for people, where that is known
 */
public record MeasuredLoop(
    Latency delay, double uncertaintySamples, Optional<String> state, Optional<String> taken) {
  /**
   * Checks the uncertainty.
   *
   * @throws IllegalArgumentException when it is negative or no number
   */
  public MeasuredLoop {
    if (!(uncertaintySamples >= 0)) {
      throw new IllegalArgumentException(
          "an uncertainty must be 0 samples or more, not " + uncertaintySamples);
    }
  }

  /** Of which nothing but the delay is known. */
  public static MeasuredLoop of(Latency delay) {
    return new MeasuredLoop(delay, 0, Optional.empty(), Optional.empty());
  }

  /** Where the figure is from: {@code measured 2026-05-02 20:14, before}. */
  public String source() {
    return DelaySource.MEASURED.label()
        + taken.map(word -> " " + word).orElse("")
        + state.map(word -> (taken.isPresent() ? ", " : " ") + word).orElse("");
  }
}
