package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Limits;

/**
 * The return runs on a clock of its own: counted in samples, the sound comes later and later where
 * that clock is fast, earlier and earlier where it is slow.
 *
 * @param ppm how much faster the return's clock runs, -10000 to 10000 parts per million
 */
record ClockFault(double ppm) implements SoundFault {
  ClockFault {
    Limits.check("drift", ppm, -10_000, 10_000, "ppm");
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    return Interpolation.paced(sound, scene.start(), pace());
  }

  @Override
  public Sound over(Sound sound, StreamScene scene) {
    return new PacedSound(sound, scene.since(), pace());
  }

  private double pace() {
    return 1 / (1 + ppm * 1e-6);
  }
}
