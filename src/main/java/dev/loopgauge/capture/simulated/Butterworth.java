package dev.loopgauge.capture.simulated;

/**
 * A second-order Butterworth filter, the bilinear transform of 1 / (s^2 + sqrt(2) s + 1) or its
 * mirror image (derived).
 *
 * @param b0 the weight of the sample just come in, and of the one two before it
 * @param b1 the weight of the sample before
 * @param a1 the weight of the last output, to be taken off
 * @param a2 the weight of the output before that, to be taken off
 */
record Butterworth(double b0, double b1, double a1, double a2) {
  /** Passes what lies below the edge, given as a part of the sample rate. */
  static Butterworth lowPass(double edge) {
    double k = Math.tan(Math.PI * edge);
    return poles(k, k * k, 2 * k * k);
  }

  /** Passes what lies above the edge, given as a part of the sample rate. */
  static Butterworth highPass(double edge) {
    return poles(Math.tan(Math.PI * edge), 1, -2);
  }

  private static Butterworth poles(double k, double b0, double b1) {
    double a0 = 1 + Math.sqrt(2) * k + k * k;
    return new Butterworth(
        b0 / a0, b1 / a0, 2 * (k * k - 1) / a0, (1 - Math.sqrt(2) * k + k * k) / a0);
  }

  /** Filters forwards, then backwards: twice the slope, no delay. */
  double[] bothWays(double[] sound) {
    return reversed(forwards(reversed(forwards(sound))));
  }

  private double[] forwards(double[] sound) {
    double[] out = new double[sound.length];
    double s1 = 0;
    double s2 = 0;
    for (int i = 0; i < out.length; i++) {
      out[i] = b0 * sound[i] + s1;
      s1 = b1 * sound[i] - a1 * out[i] + s2;
      s2 = b0 * sound[i] - a2 * out[i];
    }
    return out;
  }

  private static double[] reversed(double[] sound) {
    double[] back = new double[sound.length];
    for (int i = 0; i < back.length; i++) {
      back[i] = sound[sound.length - 1 - i];
    }
    return back;
  }
}
