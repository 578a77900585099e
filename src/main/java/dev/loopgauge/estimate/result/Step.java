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
