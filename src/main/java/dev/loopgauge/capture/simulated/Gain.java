package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Limits;
import dev.loopgauge.signal.Signal;

/**
 * The return comes back louder or quieter.
 *
 * @param db the change of level in dB, -120 to 40
 */
record Gain(double db) implements SoundFault {
  Gain {
    Limits.check("gain", db, -120, 40, "dB");
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    return Signal.of(scene.rate(), sound).times(Decibels.toFactor(db)).toArray();
  }
}
