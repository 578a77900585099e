package dev.loopgauge.estimate.result;

/**
 * A delay that changed all at once and stayed changed: a lost block, a stream reopened.
 *
 * @param atSeconds when, to within one window, counted from the start of the recording
 * @param fromSamples the delay before
 * @param toSamples the delay after
 */
public record Step(double atSeconds, double fromSamples, double toSamples) {
  /**
   * Digital parts move sound by whole samples, and a converter that starts anew puts it anywhere
   * within one: what lies less than half a sample off is likelier not to have moved (derived).
   */
  public static final double LEAST_SAMPLES = 0.5;

  /**
   * Checks that all are numbers.
   *
   * @throws IllegalArgumentException when one is not finite
   */
  public Step {
    Finite.check("a moment", atSeconds);
    Finite.check("a delay before a step", fromSamples);
    Finite.check("a delay after a step", toSamples);
  }

  /** How much later the path is since, in samples; negative when it is earlier. */
  public double changeSamples() {
    return toSamples - fromSamples;
  }
}
