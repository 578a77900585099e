package dev.loopgauge.estimate;

import dev.loopgauge.estimate.drift.WindowDelay;
import dev.loopgauge.estimate.reading.LongestDelay;
import dev.loopgauge.signal.SampleRate;

/**
 * How sound is followed while it goes by.
 *
 * @param windowSeconds how long each window is, {@value Tracker#SHORTEST_SECONDS} to {@value
 *     Tracker#LONGEST_SECONDS}
 * @param stepSeconds how much later each window starts than the one before, above 0 and at most a
 *     window
 * @param maxDelaySeconds how far to look either way, above 0 and at most {@value
 *     LongestDelay#SECONDS}
 */
public record WatchPlan(double windowSeconds, double stepSeconds, double maxDelaySeconds) {
  /**
   * Checks all three.
   *
   * @throws IllegalArgumentException when one is out of range
   */
  public WatchPlan {
    Tracker.checkWindow(windowSeconds);
    LongestDelay.checked(maxDelaySeconds);
    if (!(stepSeconds > 0 && stepSeconds <= windowSeconds)) {
      throw new IllegalArgumentException(
          "windows must start above 0 and at most "
              + windowSeconds
              + " s apart, not "
              + stepSeconds
              + " s");
    }
  }

  /** How many samples a window has. */
  int window(SampleRate rate) {
    return rate.samplesIn(windowSeconds);
  }

  /** How many samples windows start apart, 1 or more. */
  int step(SampleRate rate) {
    return Math.max(1, rate.samplesIn(stepSeconds));
  }

  /** How many samples on either side of a window are looked at. */
  int reach(SampleRate rate) {
    return rate.samplesIn(maxDelaySeconds) + WindowDelay.reach(rate, window(rate));
  }

  /** How many samples must be held, where as many seconds may go by while windows are read. */
  int held(SampleRate rate, double spareSeconds) {
    return window(rate) + step(rate) + 2 * reach(rate) + rate.samplesIn(spareSeconds);
  }
}
