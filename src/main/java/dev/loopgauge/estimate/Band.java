package dev.loopgauge.estimate;

/**
 * The delay of one octave band.
 *
 * @param centreHz the band's nominal centre, in Hz
 * @param delaySamples its delay, in samples
 * @param uncertaintySamples the expanded uncertainty of that (k = 2), in samples
 */
public record Band(double centreHz, double delaySamples, double uncertaintySamples) {
  /**
   * Checks that all are numbers.
   *
   * @throws IllegalArgumentException when one is not finite, or the uncertainty is negative
   */
  public Band {
    Finite.check("a band's centre", centreHz);
    Finite.check("a band's delay", delaySamples);
    Finite.checkUncertainty("of a band's delay", uncertaintySamples);
  }

  /** The same band, later by some samples. */
  Band moved(double bySamples) {
    return new Band(centreHz, delaySamples + bySamples, uncertaintySamples);
  }
}
