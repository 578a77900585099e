package dev.loopgauge.estimate;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.SplittableRandom;

/** Programme of a show, from a seed: speech, music and applause, and silence between. */
public final class ShowProgramme {
  private static final double SHORT_PAUSE = 4;
  private static final double LONG_PAUSE = 25;

  private ShowProgramme() {}

  /**
   * All three in turn for 5 to 40 s each, at levels of their own within 18 dB, with a pause after
   * each, now and then a long one. The silence is digital or, by the seed, a microphone's noise.
   */
  public static double[] of(SampleRate rate, double seconds, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] programme = new double[rate.samplesIn(seconds)];
    int at = 0;
    for (int kind = random.nextInt(3); at < programme.length; kind++) {
      Signal sound = sound(kind % 3, rate, 5 + 35 * random.nextDouble(), random);
      double factor = Math.pow(10, -0.9 * random.nextDouble());
      for (int i = 0; i < sound.length() && at + i < programme.length; i++) {
        programme[at + i] = factor * sound.at(i);
      }
      double pause = random.nextInt(6) == 0 ? LONG_PAUSE : SHORT_PAUSE;
      at += sound.length() + rate.samplesIn(pause * random.nextDouble());
    }
    if (random.nextBoolean()) {
      for (int i = 0; i < programme.length; i++) {
        programme[i] += 3e-5 * random.nextGaussian();
      }
    }
    return programme;
  }

  /** One of the three, 0 to 2. */
  public static Signal sound(int kind, SampleRate rate, double seconds, SplittableRandom random) {
    return switch (kind) {
      case 0 -> ShowSound.speech(rate, seconds, random);
      case 1 -> ShowSound.music(rate, seconds, random);
      default -> ShowSound.applause(rate, seconds, random);
    };
  }
}
