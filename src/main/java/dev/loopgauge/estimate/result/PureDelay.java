package dev.loopgauge.estimate.result;

/**
 * The delay that no filter explains: what a budget is compared with.
 *
 * @param samples the delay, in samples
 * @param uncertaintySamples its expanded uncertainty (k = 2), in samples
 */
public record PureDelay(double samples, double uncertaintySamples) {
  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException when one is not finite, or the uncertainty is not above 0
   */
  public PureDelay {
    Finite.check("a pure delay", samples);
    if (!(uncertaintySamples > 0) || Double.isInfinite(uncertaintySamples)) {
      throw new IllegalArgumentException(
          "an uncertainty must be a positive number of samples, not " + uncertaintySamples);
    }
  }

  /** The same delay, later by some samples and with more uncertainty (k = 2), as squares. */
  PureDelay moved(double bySamples, double uncertainty) {
    return new PureDelay(samples + bySamples, Math.hypot(uncertaintySamples, uncertainty));
  }
}
