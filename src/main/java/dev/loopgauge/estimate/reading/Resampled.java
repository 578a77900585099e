package dev.loopgauge.estimate.reading;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;

/**
 * A return read a little faster or slower, so that a delay that drifts stands still.
 *
 * <p>Between samples it is interpolated by a sinc function under J. Kaiser's window, {@value #TAPS}
 * taps, whose error stays below -80 dB up to nine tenths of the band (A. Oppenheim, R. Schafer,
 * "Discrete-Time Signal Processing", section 7.5.3, from memory).
 *
 * @param of the return
 * @param middle the sample that stays where it is
 * @param slope how much further each following sample is read, in samples; positive where the
 *     return falls behind
 */
public record Resampled(Samples of, double middle, double slope) implements Samples {
  private static final int TAPS = 32;
  private static final int HALF = TAPS / 2;
  private static final int PHASES = 1024;
  private static final double BETA = 8;
  private static final double[][] WEIGHTS = weights();

  @Override
  public SampleRate rate() {
    return of.rate();
  }

  @Override
  public int length() {
    return of.length();
  }

  @Override
  public void copyTo(int from, double[] target, int at, int length) {
    if (length == 0) {
      return;
    }
    int first = (int) Math.floor(position(from)) - HALF;
    int last = (int) Math.floor(position(from + length - 1)) + HALF + 1;
    double[] source = new double[last - first + 1];
    of.copyTo(first, source, 0, source.length);
    for (int i = 0; i < length; i++) {
      target[at + i] = between(source, position(from + i) - first);
    }
  }

  private double position(int n) {
    return n + slope * (n - middle);
  }

  /** The value at a position that has {@link #HALF} samples on either side. */
  private static double between(double[] source, double position) {
    int before = (int) position;
    double phase = (position - before) * PHASES;
    int row = (int) phase;
    double part = phase - row;
    double[] low = WEIGHTS[row];
    double[] high = WEIGHTS[row + 1];
    double sum = 0;
    for (int k = 0; k < TAPS; k++) {
      sum += source[before - HALF + 1 + k] * (low[k] + part * (high[k] - low[k]));
    }
    return sum;
  }

  private static double[][] weights() {
    double[][] weights = new double[PHASES + 1][TAPS];
    for (int row = 0; row <= PHASES; row++) {
      for (int k = 0; k < TAPS; k++) {
        double distance = k - HALF + 1 - (double) row / PHASES;
        weights[row][k] = sinc(distance) * kaiser(distance / HALF);
      }
    }
    return weights;
  }

  private static double sinc(double x) {
    return x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
  }

  private static double kaiser(double x) {
    return bessel(BETA * Math.sqrt(Math.max(0, 1 - x * x))) / bessel(BETA);
  }

  /** The modified Bessel function of the first kind and order 0, by its power series. */
  private static double bessel(double x) {
    double term = 1;
    double sum = 1;
    for (int k = 1; term > 1e-17 * sum; k++) {
      term *= x / (2 * k) * (x / (2 * k));
      sum += term;
    }
    return sum;
  }
}
