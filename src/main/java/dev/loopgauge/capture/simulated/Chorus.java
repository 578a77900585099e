package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Limits;

/**
 * A chorus: a copy of the sound, {@value #MIDDLE_MS} ms later on average, swings to and fro in time
 * and is mixed in.
 *
 * <p>Source: J. Dattorro, "Effect Design, Part 2: Delay-Line Modulation and Chorus", J. Audio Eng.
 * Soc. 45(10), 1997, for the structure (from memory); the average is common practice, no source.
 *
 * @param hertz how often the copy swings, 0.01 to 20 Hz
 * @param swingMs how far it swings to either side, 0.01 to 10 ms
 * @param levelDb the copy's level against the sound, -80 to 20 dB
 */
record Chorus(double hertz, double swingMs, double levelDb) implements SoundFault {
  /** The level where none is said. */
  static final double USUAL_LEVEL_DB = -6;

  private static final double MIDDLE_MS = 15;

  Chorus {
    Limits.check("a chorus", hertz, 0.01, 20, "swings a second");
    Limits.check("a chorus's swing", swingMs, 0.01, 10, "ms");
    Limits.check("a chorus's copy", levelDb, -80, 20, "dB against the sound");
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    double perMs = scene.rate().hertz() / 1000.0;
    double step = 2 * Math.PI * hertz / scene.rate().hertz();
    double factor = Decibels.toFactor(levelDb);
    double[] mixed = new double[sound.length];
    for (int i = 0; i < mixed.length; i++) {
      double late = (MIDDLE_MS + swingMs * Math.sin(step * (i - scene.start()))) * perMs;
      mixed[i] = sound[i] + factor * Interpolation.at(sound, i - late);
    }
    return mixed;
  }

  @Override
  public int reach(StreamScene scene) {
    return scene.rate().samplesIn((MIDDLE_MS + swingMs) / 1000) + Interpolation.REACH + 1;
  }
}
