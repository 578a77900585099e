package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Limits;

/**
 * The device at the return runs at another sample rate and nothing converts it: the sound comes
 * back at the wrong speed.
 *
 * @param hertz that device's rate, 8000 to 768000 Hz
 */
record WrongSpeed(double hertz) implements SoundFault {
  WrongSpeed {
    Limits.check("the other rate", hertz, 8_000, 768_000, "Hz");
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    double pace = scene.rate().hertz() / hertz;
    double[] wrong = new double[sound.length];
    for (int i = 0; i < wrong.length; i++) {
      wrong[i] = Interpolation.at(sound, i * pace);
    }
    return wrong;
  }
}
