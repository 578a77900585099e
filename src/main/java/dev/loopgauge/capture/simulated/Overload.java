package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Limits;
import java.util.Arrays;

/**
 * The return is driven so hard that the converter cuts its peaks off.
 *
 * @param cutDb where the cut falls against the sound's own peak, in dB, -40 to 0
 */
record Overload(double cutDb) implements SoundFault {
  private static final double HEARD_SECONDS = 30;

  Overload {
    Limits.check("clip", cutDb, -40, 0, "dB against the peak");
  }

  /** Raises the sound; the {@link Converter} after it cuts at full scale. */
  @Override
  public double[] on(double[] sound, Scene scene) {
    return raised(sound, peak(sound));
  }

  /** Raises a stream by the peak of its first {@value #HEARD_SECONDS} seconds. */
  @Override
  public Sound over(Sound sound, StreamScene scene) {
    double peak = peak(sound.read(0, scene.rate().samplesIn(HEARD_SECONDS)));
    return (from, length) -> raised(sound.read(from, length), peak);
  }

  private double[] raised(double[] sound, double peak) {
    double factor = peak == 0 ? 1 : Decibels.toFactor(-cutDb) / peak;
    return Arrays.stream(sound).map(sample -> factor * sample).toArray();
  }

  private static double peak(double[] sound) {
    return Arrays.stream(sound).map(Math::abs).max().orElse(0);
  }
}
