package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Limits;
import java.util.Arrays;

/**
 * The sound is gone for a moment, then goes on as late as it was.
 *
 * @param seconds when, counted from the start of the take, 0 to 600 s
 * @param ms for how long, 0.01 to 10000 ms
 */
record Dropout(double seconds, double ms) implements SoundFault {
  /** The length where none is said. */
  static final double USUAL_MS = 20;

  Dropout {
    Limits.check("a dropout", seconds, 0, 600, "s into the take");
    Limits.check("a dropout", ms, 0.01, 10_000, "ms long");
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    double[] interrupted = sound.clone();
    int from = scene.placeOf(seconds, interrupted.length);
    int to = scene.placeOf(seconds + ms / 1000, interrupted.length);
    Arrays.fill(interrupted, from, to, 0);
    return interrupted;
  }
}
