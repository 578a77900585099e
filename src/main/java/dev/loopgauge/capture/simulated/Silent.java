package dev.loopgauge.capture.simulated;

/** Nothing comes back but the return's own noise floor, as from a muted path. */
record Silent() implements SoundFault {
  @Override
  public double[] on(double[] sound, Scene scene) {
    return new double[sound.length];
  }
}
