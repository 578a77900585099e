package dev.loopgauge.stats;

import org.apache.commons.statistics.distribution.NormalDistribution;

/** What is known of a Gaussian value of which only a limit is known. */
public final class NormalTail {
  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

  /** From here on a series of two terms is good to a part in 10,000. */
  private static final double FAR = 20;

  private NormalTail() {}

  /**
   * By how much a standard Gaussian value that is above a limit is above it on average: density
   * over tail, less the limit (the inverse Mills ratio; N. L. Johnson, S. Kotz, "Continuous
   * Univariate Distributions", chapter 13, from memory).
   *
   * @param limit the limit in standard deviations from the mean
   */
  public static double meanExcess(double limit) {
    return limit > FAR
        ? (1 - 2 / (limit * limit)) / limit
        : STANDARD.density(limit) / STANDARD.survivalProbability(limit) - limit;
  }
}
