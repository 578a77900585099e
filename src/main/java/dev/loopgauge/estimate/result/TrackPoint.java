package dev.loopgauge.estimate.result;

import dev.loopgauge.signal.Latency;

/**
 * The delay at one moment of a long recording.
 *
 * @param atSeconds the middle of its window, counted from the start of the recording
 * @param delay how much later the return is than the reference
 * @param uncertaintySamples the expanded uncertainty of that, k = 2, in samples
 */
public record TrackPoint(double atSeconds, Latency delay, double uncertaintySamples) {
  /**
   * Checks that all are numbers.
   *
   * @throws IllegalArgumentException when one is not finite, or the uncertainty is negative
   */
  public TrackPoint {
    Finite.check("a moment", atSeconds);
    Finite.check("a delay", delay.samples());
    Finite.checkUncertainty("of a delay", uncertaintySamples);
  }
}
