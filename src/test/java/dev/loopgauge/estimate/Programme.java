package dev.loopgauge.estimate;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;

/** Sound like a show's, without a pattern, and returns of it whose delay may change. */
final class Programme {
  static final SampleRate RATE = new SampleRate(8_000);
  private static final int HALF = 24;

  private Programme() {}

  /** Noise below three quarters of the band. */
  static double[] of(double seconds, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] white = new double[RATE.samplesIn(seconds)];
    for (int i = 0; i < white.length; i++) {
      white[i] = 0.1 * random.nextGaussian();
    }
    double[] low = new double[white.length];
    for (int i = 0; i < low.length; i++) {
      for (int k = Math.max(0, i - HALF); k <= Math.min(low.length - 1, i + HALF); k++) {
        low[i] += white[k] * 0.75 * tap(0.75 * (i - k), i - k);
      }
    }
    return low;
  }

  /**
   * A return: at sample n it holds what the programme held {@code delay(n)} samples earlier, in a
   * little noise.
   */
  static double[] late(double[] programme, DoubleUnaryOperator delay, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] late = new double[programme.length];
    for (int n = 0; n < late.length; n++) {
      double at = n - delay.applyAsDouble(n);
      int near = (int) Math.rint(at);
      for (int k = Math.max(0, near - HALF); k <= near + HALF && k < late.length; k++) {
        late[n] += programme[k] * tap(at - k, at - k);
      }
      late[n] = 0.5 * late[n] + 1e-4 * random.nextGaussian();
    }
    return late;
  }

  /** A sinc function under Hann's window. */
  private static double tap(double sincAt, double windowAt) {
    double x = Math.PI * sincAt;
    double window = 0.5 + 0.5 * Math.cos(Math.PI * windowAt / (HALF + 1));
    return Math.abs(x) < 1e-12 ? window : window * Math.sin(x) / x;
  }

  static Signal signal(double... samples) {
    return Signal.of(RATE, samples);
  }
}
