package dev.loopgauge.estimate;

/**
 * The delay of one octave band.
 *
 * @param centreHz the band's nominal centre, in Hz
 * @param delaySamples its delay, in samples
 * @param uncertaintySamples the expanded uncertainty of that (k = 2), in samples
 */
public record Band(double centreHz, double delaySamples, double uncertaintySamples) {
  /** The same band, later by some samples. */
  Band moved(double bySamples) {
    return new Band(centreHz, delaySamples + bySamples, uncertaintySamples);
  }
}
