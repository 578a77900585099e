package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Signal;

/** The polarity is swapped, as by a miswired cable. */
record Inverted() implements SoundFault {
  @Override
  public double[] on(double[] sound, Scene scene) {
    return Signal.of(scene.rate(), sound).times(-1).toArray();
  }
}
