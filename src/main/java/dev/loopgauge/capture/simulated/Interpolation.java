package dev.loopgauge.capture.simulated;

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
  private static final int TAPS = 2 * HALF;

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

  /** The weights of the samples around a point that lies {@code fraction} past a sample. */
  private static double[] taps(double fraction) {
    double[] taps = new double[TAPS];
    for (int k = 0; k < TAPS; k++) {
      double distance = fraction + HALF - 1 - k;
      taps[k] = sinc(distance) * window(distance / HALF);
    }
    return taps;
  }

  private static double sinc(double x) {
    return x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
  }

  /** The window at {@code x} from -1 to 1, 1 in the middle. */
  private static double window(double x) {
    double c = Math.cos(Math.PI * x);
    double twice = 2 * c * c - 1;
    double thrice = c * (2 * twice - 1);
    return 0.35875 + 0.48829 * c + 0.14128 * twice + 0.01168 * thrice;
  }
}
