package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Limits;
import dev.loopgauge.signal.Signal;

/**
 * The return is driven so hard that the converter cuts its peaks off.
 *
 * @param cutDb where the cut falls against the sound's own peak, in dB, -40 to 0
 */
record Overload(double cutDb) implements SoundFault {
  Overload {
    Limits.check("clip", cutDb, -40, 0, "dB against the peak");
  }

  /** Raises the sound; the {@link Converter} after it cuts at full scale. */
  @Override
  public double[] on(double[] sound, Scene scene) {
    Signal signal = Signal.of(scene.rate(), sound);
    double peak = signal.peak();
    return peak == 0 ? sound : signal.times(Decibels.toFactor(-cutDb) / peak).toArray();
  }
}
