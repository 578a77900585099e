package dev.loopgauge.capture.simulated;

import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * Reads a sound between its samples: band-limited interpolation by a sinc under a four-term
 * Blackman-Harris window of {@value #TAPS} samples. Up to 0.42 times the rate the error stays more
 * than 100 dB below the sound. Outside its ends a sound is silent.
 *
 * <p>Sources: J. O. Smith and P. Gossett, "A flexible sampling-rate conversion method", ICASSP
 * 1984, for the method; F. J. Harris, "On the use of windows for harmonic analysis with the
 * discrete Fourier transform", Proc. IEEE 66(1), 1978, for the window (both from memory; the
 * accuracy is measured in {@code InterpolationTest}).
 */
final class Interpolation {
  private static final int HALF = 32;

  /** How much sound on either side of a place tells its value, in samples. */
  static final int REACH = HALF + 1;

  private static final int TAPS = 2 * HALF;
  private static final double[] COSINES = turns(Math::cos);
  private static final double[] SINES = turns(Math::sin);

  private Interpolation() {}

  /** The sound, {@code samples} later: any number, whole or not. */
  static double[] delayed(double[] sound, double samples) {
    int whole = (int) Math.ceil(samples);
    double[] taps = taps(whole - samples);
    double[] later = new double[sound.length];
    for (int i = 0; i < later.length; i++) {
      later[i] = weighed(sound, i - whole, taps);
    }
    return later;
  }

  /** The sound's value at a position in samples. */
  static double at(double[] sound, double position) {
    int before = (int) Math.floor(position);
    return weighed(sound, before, taps(position - before));
  }

  /** The sound read at another pace from a place on, which may lie before its first sample. */
  static double[] paced(double[] sound, long since, double pace) {
    double[] read = new double[sound.length];
    for (int i = 0; i < read.length; i++) {
      read[i] = at(sound, since + (i - since) * pace);
    }
    return read;
  }

  /** The sum of the samples around {@code before} and the one after it, each times its tap. */
  private static double weighed(double[] sound, int before, double[] taps) {
    int first = before - HALF + 1;
    int from = Math.max(0, -first);
    int to = Math.min(TAPS, sound.length - first);
    double sum = 0;
    for (int k = from; k < to; k++) {
      sum += taps[k] * sound[first + k];
    }
    return sum;
  }

  /**
   * The weights of the samples around a point that lies {@code fraction} past a sample. Sine and
   * cosine are worked out once and turned from tap to tap, since a drift asks for new weights for
   * each sample.
   */
  private static double[] taps(double fraction) {
    double[] taps = new double[TAPS];
    double sine = Math.sin(Math.PI * fraction);
    double cosineOfWindow = Math.cos(Math.PI * fraction / HALF);
    double sineOfWindow = Math.sin(Math.PI * fraction / HALF);
    for (int k = 0; k < TAPS; k++) {
      int whole = HALF - 1 - k;
      double distance = fraction + whole;
      double sinc = distance == 0 ? 1 : (whole % 2 == 0 ? sine : -sine) / (Math.PI * distance);
      double turned = cosineOfWindow * COSINES[k] - sineOfWindow * SINES[k];
      taps[k] = sinc * window(turned);
    }
    return taps;
  }

  private static double[] turns(DoubleUnaryOperator function) {
    return IntStream.range(0, TAPS)
        .mapToDouble(k -> function.applyAsDouble(Math.PI * (HALF - 1 - k) / HALF))
        .toArray();
  }

  /** The window where the cosine of its angle is {@code c}: 1 in the middle, -1 at its ends. */
  private static double window(double c) {
    double twice = 2 * c * c - 1;
    double thrice = c * (2 * twice - 1);
    return 0.35875 + 0.48829 * c + 0.14128 * twice + 0.01168 * thrice;
  }
}
