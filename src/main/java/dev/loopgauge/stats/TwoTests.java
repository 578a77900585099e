package dev.loopgauge.stats;

/**
 * Tells a figure from chance, where it rests on values with a known noise and on their scatter: the
 * tests that {@link Slope#isThere} explains.
 */
final class TwoTests {
  private TwoTests() {}

  /** Whether a figure is beyond both, with a chance of a false alarm. */
  static boolean passes(
      double value, double fromNoise, double fromScatter, double degrees, double chance) {
    return value != 0
        && degrees > 0
        && (fromNoise == 0 || Quantiles.normalBeyond(value / fromNoise) < chance)
        && (fromScatter == 0 || Quantiles.studentBeyond(value / fromScatter, degrees) < chance);
  }

  /** The larger of both expanded uncertainties, k = 2. */
  static double expanded(double fromNoise, double fromScatter, double degrees) {
    double byScatter =
        fromScatter == 0 ? 0 : Quantiles.studentWithin(Quantiles.TWO_SIGMA, degrees) * fromScatter;
    return Math.max(2 * fromNoise, byScatter);
  }
}
