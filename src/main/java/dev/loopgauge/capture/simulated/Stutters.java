package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Limits;
import java.util.List;

/**
 * The host plays a block twice and drops the next one, at several moments: at each, the last block
 * is heard again, then the sound goes on as late as it was.
 *
 * @param seconds the moments, counted from the start of the take, 0 to 600 s
 */
record Stutters(List<Double> seconds) implements SoundFault {
  /** How many moments there may be. */
  static final int MOST = 1000;

  Stutters {
    seconds = List.copyOf(seconds);
    seconds.forEach(moment -> Limits.check("a stutter", moment, 0, 600, "s into the take"));
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    double[] stuttering = sound.clone();
    for (double moment : seconds) {
      int at = Math.min(scene.rate().samplesIn(moment), sound.length);
      int length = Math.min(scene.blockSize(), sound.length - at);
      for (int i = 0; i < length; i++) {
        int before = at + i - scene.blockSize();
        stuttering[at + i] = before < 0 ? 0 : sound[before];
      }
    }
    return stuttering;
  }
}
