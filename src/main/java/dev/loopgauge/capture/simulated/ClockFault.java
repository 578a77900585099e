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
    double pace = 1 / (1 + ppm * 1e-6);
    double[] drifting = new double[sound.length];
    for (int i = 0; i < drifting.length; i++) {
      drifting[i] = Interpolation.at(sound, i * pace);
    }
    return drifting;
  }
}
