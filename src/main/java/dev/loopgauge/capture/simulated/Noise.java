package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Limits;

/**
 * White noise on top of the sound.
 *
 * @param rmsDbfs its level, root mean square, -140 to 0 dBFS
 */
record Noise(double rmsDbfs) implements SoundFault {
  Noise {
    Limits.check("noise", rmsDbfs, -140, 0, "dBFS");
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    double rms = Decibels.toFactor(rmsDbfs);
    double[] noisy = sound.clone();
    for (int i = 0; i < noisy.length; i++) {
      noisy[i] += rms * scene.random().nextGaussian();
    }
    return noisy;
  }
}
