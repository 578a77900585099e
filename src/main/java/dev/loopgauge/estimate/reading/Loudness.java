package dev.loopgauge.estimate.reading;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Samples;

/**
 * How loud some samples are.
 *
 * @param length how many there are
 * @param energy the sum of their squares
 * @param peak the largest magnitude
 */
public record Loudness(int length, double energy, double peak) {
  /** Below this there is nothing but the last bit of a 24-bit converter, in dBFS rms. */
  private static final double SILENCE_DBFS = -120;

  private static final int CHUNK = 1 << 12;

  /** Looks through some samples. */
  public static Loudness of(Samples samples) {
    return through(samples, false);
  }

  /** Whether some samples hold nothing but silence; looks no further than it must. */
  public static boolean isSilence(Samples samples) {
    return through(samples, true).isSilent();
  }

  private static Loudness through(Samples samples, boolean whileSilent) {
    Loudness loudness = new Loudness(samples.length(), 0, 0);
    double[] chunk = new double[Math.min(CHUNK, samples.length())];
    for (int from = 0; from < samples.length(); from += chunk.length) {
      int count = Math.min(chunk.length, samples.length() - from);
      samples.copyTo(from, chunk, 0, count);
      loudness = loudness.with(chunk, count);
      if (whileSilent && !loudness.isSilent()) {
        break;
      }
    }
    return loudness;
  }

  private Loudness with(double[] more, int count) {
    double sum = energy;
    double most = peak;
    for (int i = 0; i < count; i++) {
      sum += more[i] * more[i];
      double magnitude = Math.abs(more[i]);
      if (magnitude > most) {
        most = magnitude;
      }
    }
    return new Loudness(length, sum, most);
  }

  /** The sum of some squares. */
  public static double energy(double[] samples) {
    double sum = 0;
    for (double sample : samples) {
      sum += sample * sample;
    }
    return sum;
  }

  /** Whether there is nothing but silence. */
  boolean isSilent() {
    return Decibels.ofPower(energy / length) < SILENCE_DBFS;
  }
}
