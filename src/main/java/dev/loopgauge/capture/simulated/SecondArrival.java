package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Limits;

/**
 * A second copy of the sound comes back after the first, as from a channel patched twice.
 *
 * @param ms how much later, 0.01 to 1000 ms
 * @param levelDb its level against the first copy, -80 to 20 dB
 */
record SecondArrival(double ms, double levelDb) implements SoundFault {
  /** The level where none is said. */
  static final double USUAL_LEVEL_DB = -6;

  SecondArrival {
    Limits.check("the second arrival", ms, 0.01, 1000, "ms after the first");
    Limits.check("the second arrival", levelDb, -80, 20, "dB against the first");
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    double[] copy = Interpolation.delayed(sound, ms * scene.rate().hertz() / 1000);
    double factor = Decibels.toFactor(levelDb);
    for (int i = 0; i < copy.length; i++) {
      copy[i] = sound[i] + factor * copy[i];
    }
    return copy;
  }

  @Override
  public int reach(StreamScene scene) {
    return scene.rate().samplesIn(ms / 1000) + Interpolation.REACH + 1;
  }
}
