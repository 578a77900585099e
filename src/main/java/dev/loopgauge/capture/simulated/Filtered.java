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
  /** After this, what a filter at 20 Hz or above still rings of a sound is below 1e-5 of it. */
  private static final double SETTLED_SECONDS = 0.5;

  @Override
  public double[] on(double[] sound, Scene scene) {
    return design.at(scene.rate()).on(sound);
  }

  @Override
  public int reach(StreamScene scene) {
    return scene.rate().samplesIn(SETTLED_SECONDS);
  }

  @Override
  public void checkAt(SampleRate rate) {
    try {
      design.at(rate);
    } catch (IllegalArgumentException e) {
      throw new FaultFormatException(
          "this filter can't be: " + e.getMessage(), "give it a lower corner, or raise the rate");
    }
  }
}
