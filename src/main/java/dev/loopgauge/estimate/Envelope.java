package dev.loopgauge.estimate;

/**
 * The complex envelope of a band of a correlation at some lag, with its first and second derivative
 * by the lag.
 *
 * @param scale what all values are to be multiplied by
 * @param re the real parts: value, first and second derivative
 * @param im the imaginary parts
 */
@SuppressWarnings("ArrayRecordComponent") // made and used up within one loop, never compared
record Envelope(double scale, double[] re, double[] im) {
  /** The envelope's magnitude. */
  double magnitude() {
    return scale * Math.hypot(re[0], im[0]);
  }

  /** Where Newton's method goes from here to the top of the squared magnitude, in samples. */
  double newtonStep() {
    double slope = re[0] * re[1] + im[0] * im[1];
    double curvature = re[1] * re[1] + im[1] * im[1] + re[0] * re[2] + im[0] * im[2];
    return curvature < 0 ? -slope / curvature : 0;
  }
}
