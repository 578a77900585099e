package dev.loopgauge.estimate.result;

/**
 * When a delay changed.
 *
 * @param atSeconds the most likely moment, from the start of the stream
 * @param withinSeconds how far off that may be either way
 */
public record ChangeTime(double atSeconds, double withinSeconds) {
  /** At any moment between two. */
  public static ChangeTime between(double fromSeconds, double toSeconds) {
    return new ChangeTime((fromSeconds + toSeconds) / 2, (toSeconds - fromSeconds) / 2);
  }
}
