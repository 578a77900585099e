package dev.loopgauge.capture.simulated;

import java.util.Arrays;

/** One thing that happens to a sound on its way through a take or a stream. */
interface SoundEffect {
  /**
   * The sound after it; as long as before.
   *
   * @param sound full scale is 1.0; left as it is
   */
  double[] on(double[] sound, Scene scene);

  /** How much sound on either side of a stretch tells what becomes of it, in samples. */
  default int reach(StreamScene scene) {
    return 0;
  }

  /** What becomes of a stream. */
  default Sound over(Sound sound, StreamScene scene) {
    int reach = reach(scene);
    return (from, length) -> {
      double[] heard = sound.read(from - reach, length + 2 * reach);
      double[] changed = on(heard, scene.at(from - reach));
      return reach == 0 ? changed : Arrays.copyOfRange(changed, reach, reach + length);
    };
  }
}
