package dev.loopgauge.estimate.result;

/**
 * The delay and the level of one octave band.
 *
 * @param centreHz the band's nominal centre, in Hz
 * @param delaySamples its delay, in samples
 * @param uncertaintySamples the expanded uncertainty of that (k = 2), in samples
 * @param levelDb its level against the reference in the same band, in dB
 * @param levelUncertaintyDb the expanded uncertainty of that from noise (k = 2), in dB
 */
public record Band(
    double centreHz,
    double delaySamples,
    double uncertaintySamples,
    double levelDb,
    double levelUncertaintyDb) {
  /**
   * Checks that all are numbers.
   *
   * @throws IllegalArgumentException when one is not finite, or an uncertainty is negative
   */
  public Band {
    Finite.check("a band's centre", centreHz);
    Finite.check("a band's delay", delaySamples);
    Finite.checkUncertainty("of a band's delay", uncertaintySamples);
    Finite.check("a band's level", levelDb);
    Finite.checkUncertainty("of a band's level", levelUncertaintyDb);
  }

  /** The same band, later by some samples. */
  Band moved(double bySamples) {
    return new Band(
        centreHz, delaySamples + bySamples, uncertaintySamples, levelDb, levelUncertaintyDb);
  }
}
