package dev.loopgauge.capture.simulated;

/**
 * Everything arrives later, by a whole or fractional number of samples.
 *
 * @param samples how much later
 */
record DelayEffect(double samples) implements SoundEffect {
  @Override
  public double[] on(double[] sound, Scene scene) {
    return Interpolation.delayed(sound, samples);
  }
}
