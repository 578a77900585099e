package dev.loopgauge.estimate;

/**
 * What the path does to the sound around the arrival, as a short filter: the least-squares fit of
 * the return by the reference, shifted by the delay and filtered. A pure delay and gain fits as one
 * tap; a path with filters or a loudspeaker in it as a few more.
 *
 * <p>The fit solves the normal equations sum over j of Rxx(i - j) h[j] = Rxy(delay + i), i and j
 * from -reach to +reach, with one part in 10^9 added to Rxx(0) so that empty bands stay harmless
 * (L. Ljung, "System Identification", section 4.2, from memory).
 *
 * @param delay the delay that tap 0 stands at, in samples
 * @param reach how many taps lie on either side of tap 0
 * @param taps the filter, 2 * reach + 1 values
 */
@SuppressWarnings("ArrayRecordComponent") // never leaves this package, never compared
record PathResponse(double delay, int reach, double[] taps) {
  private static final double RIDGE = 1e-9;

  /** Fits the filter. */
  static PathResponse fit(CrossSpectrum auto, CrossSpectrum cross, double delay, int reach) {
    double[] r = auto.lagsFrom(0, 2 * reach + 1);
    r[0] *= 1 + RIDGE;
    double[] b = cross.lagsFrom(delay - reach, 2 * reach + 1);
    return new PathResponse(delay, reach, ToeplitzSystem.solve(r, b));
  }

  /** The filter's packed spectrum, with tap 0 at time 0. */
  double[] spectrum(RealFft fft) {
    double[] padded = new double[fft.length()];
    for (int i = 0; i < taps.length; i++) {
      padded[Math.floorMod(i - reach, padded.length)] = taps[i];
    }
    fft.forward(padded);
    return padded;
  }
}
