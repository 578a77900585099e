package dev.loopgauge.estimate;

/**
 * One copy of the stimulus in the return.
 *
 * @param delaySamples how much later than the reference, in samples
 * @param levelDb its level against the reference, in dB
 * @param polarity its sign against the reference
 */
public record Arrival(double delaySamples, double levelDb, Polarity polarity) {
  /** The same arrival, later by some samples. */
  Arrival moved(double bySamples) {
    return new Arrival(delaySamples + bySamples, levelDb, polarity);
  }
}
