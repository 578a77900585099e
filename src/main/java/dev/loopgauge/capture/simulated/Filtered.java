package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.filter.Design;

/**
 * The path has a causal filter in it, such as an equaliser or a crossover; it delays each frequency
 * by its own group delay.
 *
 * @param design what the filter does
 */
record Filtered(Design design) implements SoundFault {
  @Override
  public double[] on(double[] sound, Scene scene) {
    return design.at(scene.rate()).on(sound);
  }

  /**
   * Refuses a filter that a sample rate is too low for.
   *
   * @throws FaultFormatException when a corner isn't below half that rate
   */
  void checkAt(SampleRate rate) {
    try {
      design.at(rate);
    } catch (IllegalArgumentException e) {
      throw new FaultFormatException(
          "this filter can't be: " + e.getMessage(), "give it a lower corner, or raise the rate");
    }
  }
}
