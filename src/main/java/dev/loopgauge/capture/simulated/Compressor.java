package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Limits;
import dev.loopgauge.signal.SampleRate;

/**
 * A feed-forward compressor: what the sound exceeds the threshold by is divided by the ratio. It
 * closes within the attack and opens again within the release; both are time constants. There is no
 * make-up gain and no delay.
 *
 * <p>Source: D. Giannoulis, M. Massberg and J. D. Reiss, "Digital Dynamic Range Compressor Design",
 * J. Audio Eng. Soc. 60(6), 2012: a hard knee, and a branching peak detector in dB (from memory).
 *
 * @param thresholdDbfs -80 to 0 dBFS
 * @param ratio 1 to 100 dB in for one dB out
 * @param attackMs 0.01 to 1000 ms
 * @param releaseMs 0.01 to 10000 ms
 */
record Compressor(double thresholdDbfs, double ratio, double attackMs, double releaseMs)
    implements SoundFault {
  /** The attack where none is said. */
  static final double USUAL_ATTACK_MS = 5;

  /** The release where none is said. */
  static final double USUAL_RELEASE_MS = 100;

  /**
   * How many time constants it remembers; then nothing is left of what it heard: exp(-7) is 0.1 %.
   */
  private static final int RELEASES = 7;

  Compressor {
    Limits.check("a compressor's threshold", thresholdDbfs, -80, 0, "dBFS");
    Limits.check("a compressor's ratio", ratio, 1, 100, "to 1");
    Limits.check("a compressor's attack", attackMs, 0.01, 1000, "ms");
    Limits.check("a compressor's release", releaseMs, 0.01, 10_000, "ms");
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    double attack = kept(attackMs, scene.rate());
    double release = kept(releaseMs, scene.rate());
    double[] compressed = new double[sound.length];
    double down = 0;
    for (int i = 0; i < compressed.length; i++) {
      double wanted = reductionDb(sound[i]);
      double keep = wanted > down ? attack : release;
      down = keep * down + (1 - keep) * wanted;
      compressed[i] = sound[i] * Decibels.toFactor(-down);
    }
    return compressed;
  }

  @Override
  public int reach(StreamScene scene) {
    return scene.rate().samplesIn(RELEASES * Math.max(attackMs, releaseMs) / 1000);
  }

  /** How far a lasting level is turned down, in dB. */
  private double reductionDb(double sample) {
    double over = Decibels.ofFactor(sample) - thresholdDbfs;
    return Math.max(0, over) * (1 - 1 / ratio);
  }

  /** What is left of the last value after one sample. */
  private static double kept(double ms, SampleRate rate) {
    return Math.exp(-1000 / (ms * rate.hertz()));
  }
}
