package dev.loopgauge.capture.simulated;

/** One thing that happens to a sound on its way through a take. */
interface SoundEffect {
  /**
   * The sound after it; as long as before.
   *
   * @param sound full scale is 1.0; left as it is
   */
  double[] on(double[] sound, Scene scene);
}
