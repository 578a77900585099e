package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Limits;
import dev.loopgauge.signal.SampleRate;

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
    return Interpolation.paced(sound, scene.start(), pace(scene.rate()));
  }

  @Override
  public Sound over(Sound sound, StreamScene scene) {
    return new PacedSound(sound, scene.since(), pace(scene.rate()));
  }

  private double pace(SampleRate rate) {
    return rate.hertz() / hertz;
  }
}
