package dev.loopgauge.estimate.result;

/**
 * One arrival of the stimulus in the return.
 *
 * @param delaySamples how much later than the reference, in samples
 * @param levelDb its level against the reference, in dB
 * @param polarity its sign against the reference
 */
public record Arrival(double delaySamples, double levelDb, Polarity polarity) {
  /**
   * Checks that both are numbers.
   *
   * @throws IllegalArgumentException when one is not finite
   */
  public Arrival {
    Finite.check("an arrival's delay", delaySamples);
    Finite.check("an arrival's level", levelDb);
  }

  /** The same arrival, later by some samples. */
  Arrival moved(double bySamples) {
    return new Arrival(delaySamples + bySamples, levelDb, polarity);
  }
}
