package dev.loopgauge.stats;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/** Chances and quantiles of the distributions that readings follow. */
public final class Quantiles {
  /** The share within two standard deviations of a normal distribution, erf(sqrt 2). */
  public static final double TWO_SIGMA = 0.9544997361036416;

  private Quantiles() {}

  /**
   * The chance that Student's t lies further from 0 than a value, on either side.
   *
   * @param t the value; infinity has no chance
   * @param degrees the degrees of freedom, above 0
   * @throws IllegalArgumentException when there are no degrees of freedom
   */
  public static double studentBeyond(double t, double degrees) {
    return 2 * TDistribution.of(degrees).survivalProbability(Math.abs(t));
  }

  /**
   * The value that Student's t stays within, on either side, with a probability.
   *
   * @param within the probability, 0 to 1
   * @param degrees the degrees of freedom, above 0
   * @throws IllegalArgumentException when either is out of range
   */
  public static double studentWithin(double within, double degrees) {
    return TDistribution.of(degrees).inverseSurvivalProbability((1 - within) / 2);
  }

  /** The chance that a standard normal value lies further from 0 than a value, on either side. */
  public static double normalBeyond(double z) {
    return 2 * NormalDistribution.of(0, 1).survivalProbability(Math.abs(z));
  }

  /**
   * The value that chi-square exceeds with a probability.
   *
   * @param beyond the probability, 0 to 1
   * @param degrees the degrees of freedom, above 0
   * @throws IllegalArgumentException when either is out of range
   */
  public static double chiSquareBeyond(double beyond, double degrees) {
    return ChiSquaredDistribution.of(degrees).inverseSurvivalProbability(beyond);
  }
}
