package dev.loopgauge.capture.simulated;

import java.util.SplittableRandom;

/**
 * The return hears something else: a dull noise that swells and fades like speech, about four times
 * a second.
 */
record WrongSignal() implements SoundFault {
  private static final double SYLLABLES_HZ = 4;
  private static final double DULLNESS = 0.9;
  private static final double LEVEL = 0.1;

  @Override
  public double[] on(double[] sound, Scene scene) {
    SplittableRandom random = scene.random();
    double step = 2 * Math.PI * SYLLABLES_HZ / scene.rate().hertz();
    double start = 2 * Math.PI * scene.steady().nextDouble();
    double keep = Math.sqrt(1 - DULLNESS * DULLNESS);
    double[] other = new double[sound.length];
    double last = 0;
    for (int i = 0; i < other.length; i++) {
      last = DULLNESS * last + keep * random.nextGaussian();
      other[i] = LEVEL * (1 + Math.sin(start + step * (i - scene.start()))) * last;
    }
    return other;
  }
}
