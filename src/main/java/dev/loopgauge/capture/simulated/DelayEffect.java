package dev.loopgauge.capture.simulated;

import java.util.Arrays;

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

  /** Reads that much earlier, so that a long delay costs no more than a short one. */
  @Override
  public Sound over(Sound sound, StreamScene scene) {
    long whole = (long) Math.floor(samples);
    double rest = samples - whole;
    if (rest == 0) {
      return (from, length) -> sound.read(from - whole, length);
    }
    int reach = Interpolation.REACH;
    return (from, length) -> {
      double[] heard = sound.read(from - whole - reach, length + 2 * reach);
      return Arrays.copyOfRange(Interpolation.delayed(heard, rest), reach, reach + length);
    };
  }
}
