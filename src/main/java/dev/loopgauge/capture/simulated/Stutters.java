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
      double blockSeconds = (double) scene.blockSize() / scene.rate().hertz();
      int end = scene.placeOf(moment + blockSeconds, sound.length);
      for (int i = scene.placeOf(moment, sound.length); i < end; i++) {
        int before = i - scene.blockSize();
        stuttering[i] = before < 0 ? 0 : sound[before];
      }
    }
    return stuttering;
  }

  @Override
  public int reach(StreamScene scene) {
    return scene.blockSize();
  }
}
