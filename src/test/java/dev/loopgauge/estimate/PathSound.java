package dev.loopgauge.estimate;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;

/** What a path makes of a programme, sample by sample as it goes by. */
@FunctionalInterface
public interface PathSound {
  /** The sample that comes back; to be asked for one after the other. */
  double at(double[] programme, int sample);

  /** The programme later and louder by a factor. */
  static PathSound late(double samples, double factor) {
    return sliding(n -> n - samples, factor);
  }

  /**
   * The programme as it was at another time.
   *
   * @param time the sample of the programme, whole or not, that comes back at a sample
   */
  static PathSound sliding(DoubleUnaryOperator time, double factor) {
    return (programme, n) -> factor * Between.value(programme, time.applyAsDouble(n));
  }

  /** Noise of a standard deviation. */
  static PathSound noise(double deviation, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    return (programme, n) -> deviation * random.nextGaussian();
  }

  /** Other sound that the return picks up besides. */
  static PathSound other(double[] sound, double factor) {
    return (programme, n) -> factor * sound[n];
  }

  /** Both at once. */
  default PathSound plus(PathSound more) {
    return (programme, n) -> at(programme, n) + more.at(programme, n);
  }

  /** This through something that remembers what it heard. */
  default PathSound through(DoubleUnaryOperator filter) {
    return (programme, n) -> filter.applyAsDouble(at(programme, n));
  }

  /** This up to a sample, another path from there on; both hear all. */
  default PathSound until(int end, PathSound after) {
    return (programme, n) -> {
      double before = at(programme, n);
      double then = after.at(programme, n);
      return n < end ? before : then;
    };
  }

  /** Silent from one sample to before another. */
  default PathSound silent(int from, int to) {
    return (programme, n) -> n >= from && n < to ? 0 : at(programme, n);
  }

  /** A low-pass of first order, that takes so much of each new sample. */
  static DoubleUnaryOperator lowPass(double share) {
    double[] held = new double[1];
    return x -> held[0] += share * (x - held[0]);
  }

  /** A high-pass of first order. */
  static DoubleUnaryOperator highPass(double share) {
    DoubleUnaryOperator low = lowPass(share);
    return x -> x - low.applyAsDouble(x);
  }

  /** Two reflections. */
  static DoubleUnaryOperator room(int one, double ofOne, int two, double ofTwo) {
    double[] heard = new double[Math.max(one, two) + 1];
    int[] at = new int[1];
    return x -> {
      int length = heard.length;
      int now = at[0];
      heard[now] = x;
      at[0] = (now + 1) % length;
      return x
          + ofOne * heard[(now + length - one) % length]
          + ofTwo * heard[(now + length - two) % length];
    };
  }

  /** A compressor of 3 to 1 above a level that it follows with these shares. */
  static DoubleUnaryOperator compressor(double threshold, double attack, double release) {
    double[] held = new double[1];
    return x -> {
      double loud = Math.abs(x);
      held[0] += (loud > held[0] ? attack : release) * (loud - held[0]);
      return held[0] > threshold ? x * Math.pow(held[0] / threshold, -2.0 / 3) : x;
    };
  }

  /** Values between samples, by a sinc of 32 taps under a cosine's square. */
  final class Between {
    private static final int PHASES = 512;
    private static final int TAPS = 32;
    private static final double[][] TABLE = table();

    private Between() {}

    private static double[][] table() {
      double[][] table = new double[PHASES + 1][TAPS];
      for (int phase = 0; phase <= PHASES; phase++) {
        for (int tap = 0; tap < TAPS; tap++) {
          double away = (double) phase / PHASES + TAPS / 2 - 1 - tap;
          double x = Math.PI * away;
          double fade = Math.pow(Math.cos(x / (TAPS + 2)), 2);
          table[phase][tap] = fade * (Math.abs(x) < 1e-9 ? 1 : Math.sin(x) / x);
        }
      }
      return table;
    }

    static double value(double[] samples, double at) {
      int whole = (int) Math.floor(at);
      double phase = (at - whole) * PHASES;
      int first = whole - TAPS / 2 + 1;
      if (phase == 0 || first < 0 || first + TAPS > samples.length) {
        return whole >= 0 && whole < samples.length ? samples[whole] : 0;
      }
      double[] low = TABLE[(int) phase];
      double[] high = TABLE[(int) phase + 1];
      double part = phase - (int) phase;
      double sum = 0;
      for (int tap = 0; tap < TAPS; tap++) {
        sum += samples[first + tap] * (low[tap] + part * (high[tap] - low[tap]));
      }
      return sum;
    }
  }
}
