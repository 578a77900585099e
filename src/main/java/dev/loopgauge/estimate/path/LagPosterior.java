package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.spectrum.CrossSpectrum;

/**
 * How far the lags lie spread that a correlation makes likely, around its peak. The logarithm of a
 * lag's likelihood, level unknown, is R^2 over twice the variance of R, and with no lag preferred
 * beforehand the likelihoods are weights (S. M. Kay, "Estimation Theory", example 7.15, from
 * memory; the second moment derived). High above the noise this comes to what the curvature at the
 * peak says. Near the noise it is more: a peak that falls off by a part only, as a sweep's, has its
 * strongest value on a flank at times, which no curvature knows of.
 */
final class LagPosterior {
  /** How many steps to either side count; the flanks of a sweep's peak lie within a third. */
  private static final int REACH = 64;

  private LagPosterior() {}

  /**
   * The spread.
   *
   * @param correlation the correlation
   * @param peak its peak
   * @param valueVariance the variance of its values
   * @param step how far the peak's curvature lets the lag spread, in samples
   * @return a standard deviation from the peak, in samples
   */
  static double spread(
      CrossSpectrum correlation, CrossSpectrum.Point peak, double valueVariance, double step) {
    double most = peak.value() * peak.value();
    double weights = 0;
    double moment = 0;
    for (int i = -REACH; i <= REACH; i++) {
      double value = correlation.at(peak.lag() + i * step).value();
      if (value * peak.value() > 0) {
        double weight = Math.exp((value * value - most) / (2 * valueVariance));
        weights += weight;
        moment += weight * i * i;
      }
    }
    return step * Math.sqrt(moment / weights);
  }
}
