package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.SampleRate;

/**
 * A fault that counts its own time from a later moment.
 *
 * @param fault what is wrong
 * @param seconds the moment, counted from the start of the take or stream
 */
record Since(SoundFault fault, double seconds) implements SoundFault {
  @Override
  public double[] on(double[] sound, Scene scene) {
    return fault.on(sound, scene.startingAt(seconds));
  }

  @Override
  public int reach(StreamScene scene) {
    return fault.reach(scene);
  }

  @Override
  public Sound over(Sound sound, StreamScene scene) {
    return fault.over(sound, scene.startingAt(seconds));
  }

  @Override
  public void checkAt(SampleRate rate) {
    fault.checkAt(rate);
  }
}
