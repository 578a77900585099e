package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Limits;

/**
 * Mains hum on top of the sound: {@value #MAINS_HZ} Hz and its harmonics up to the {@value
 * #HARMONICS}th, the n-th at 1/n of the first.
 *
 * @param rmsDbfs its level, root mean square, -140 to 0 dBFS
 */
record Hum(double rmsDbfs) implements SoundFault {
  private static final double MAINS_HZ = 50;
  private static final int HARMONICS = 8;

  Hum {
    Limits.check("hum", rmsDbfs, -140, 0, "dBFS");
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    double step = 2 * Math.PI * MAINS_HZ / scene.rate().hertz();
    double start = 2 * Math.PI * scene.steady().nextDouble();
    double first = Decibels.toFactor(rmsDbfs) / rmsOfShape();
    double[] humming = sound.clone();
    for (int i = 0; i < humming.length; i++) {
      humming[i] += first * shape(start + step * (i - scene.start()));
    }
    return humming;
  }

  private static double shape(double phase) {
    double sum = 0;
    for (int n = 1; n <= HARMONICS; n++) {
      sum += Math.sin(n * phase) / n;
    }
    return sum;
  }

  private static double rmsOfShape() {
    double power = 0;
    for (int n = 1; n <= HARMONICS; n++) {
      power += 0.5 / (n * n);
    }
    return Math.sqrt(power);
  }
}
