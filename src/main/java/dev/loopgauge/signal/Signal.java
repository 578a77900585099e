package dev.loopgauge.signal;

import java.util.Arrays;

/**
 * One channel of sampled sound. Full scale is 1.0; values beyond it are kept as they are.
 * Immutable: arrays are copied in and out.
 */
public final class Signal implements Samples {
  private final SampleRate rate;
  private final double[] samples;

  private Signal(SampleRate rate, double[] samples) {
    this.rate = rate;
    this.samples = samples;
  }

  /** A signal of the given samples, copied. */
  public static Signal of(SampleRate rate, double... samples) {
    return new Signal(rate, samples.clone());
  }

  /** A signal of samples that nobody else holds. */
  static Signal taking(SampleRate rate, double[] samples) {
    return new Signal(rate, samples);
  }

  /** A signal of the given samples, copied. */
  public static Signal of(SampleRate rate, float... samples) {
    double[] copy = new double[samples.length];
    for (int i = 0; i < copy.length; i++) {
      copy[i] = samples[i];
    }
    return new Signal(rate, copy);
  }

  /** Silence of {@code length} samples. */
  public static Signal silence(SampleRate rate, int length) {
    return new Signal(rate, new double[length]);
  }

  @Override
  public SampleRate rate() {
    return rate;
  }

  @Override
  public int length() {
    return samples.length;
  }

  /** The sample at {@code index}, counted from 0. */
  public double at(int index) {
    return samples[index];
  }

  /** A copy of all samples. */
  public double[] toArray() {
    return samples.clone();
  }

  @Override
  public void copyTo(int from, double[] target, int at, int length) {
    int first = Math.max(from, 0);
    int end = Math.min(from + length, samples.length);
    Arrays.fill(target, at, at + length, 0);
    if (first < end) {
      System.arraycopy(samples, first, target, at + first - from, end - first);
    }
  }

  /** This signal times a factor. */
  public Signal times(double factor) {
    double[] scaled = new double[samples.length];
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] = samples[i] * factor;
    }
    return new Signal(rate, scaled);
  }

  /** The largest magnitude, 0 for an empty signal. */
  public double peak() {
    double peak = 0;
    for (double x : samples) {
      peak = Math.max(peak, Math.abs(x));
    }
    return peak;
  }

  /** The sum of the squared samples. */
  public double energy() {
    double sum = 0;
    for (double x : samples) {
      sum += x * x;
    }
    return sum;
  }

  /** The root mean square, 0 for an empty signal. */
  public double rms() {
    return samples.length == 0 ? 0 : Math.sqrt(energy() / samples.length);
  }
}
