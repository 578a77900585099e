package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.stats.Odds;
import dev.loopgauge.stats.Quantiles;

/**
 * The standard uncertainty of a delay, in samples, from its parts (JCGM 100:2008, GUM, clauses 4
 * and 5, from memory). Parts that don't depend on each other add as squares.
 */
public final class Uncertainty {
  /** The least that is ever claimed: the arithmetic's own error, far below any converter's. */
  private static final double ARITHMETIC = 1e-6;

  private static final double FEWEST_DEGREES = 3;

  private double variance = ARITHMETIC * ARITHMETIC;

  /** Adds an independent part, a standard uncertainty in samples. */
  public Uncertainty with(double standard) {
    variance += standard * standard;
    return this;
  }

  /** The expanded uncertainty, k = 2. */
  public double expanded() {
    return Measurement.COVERAGE_FACTOR * Math.sqrt(variance);
  }

  /**
   * By how much a standard uncertainty of some degrees of freedom is widened so that twice it
   * covers what two standard deviations of a Gaussian do, 95.45 %: half of Student's t (JCGM
   * 100:2008, G.3; the series for large degrees of freedom from M. Abramowitz, I. A. Stegun,
   * "Handbook of Mathematical Functions", 26.7.5, from memory). By the series, which is quick where
   * {@link Quantiles} would first load a library: each estimate asks for some.
   *
   * @param degrees the degrees of freedom; below {@value #FEWEST_DEGREES} taken as that
   */
  static double widening(double degrees) {
    double per = 1 / Math.max(FEWEST_DEGREES, degrees);
    double z = Measurement.COVERAGE_FACTOR;
    double z2 = z * z;
    return 1
        + per * (z2 + 1) / 4
        + per * per * ((5 * z2 + 16) * z2 + 3) / 96
        + per * per * per * (((3 * z2 + 19) * z2 + 17) * z2 - 15) / 384;
  }

  /**
   * The expanded uncertainty (k = 2) of a level in dB, to the first order (the delta method): 20 lg
   * has the slope 20 / ln 10 over the factor.
   *
   * @param relative the relative standard uncertainty of the factor behind the level, 0 or more
   */
  static double levelDb(double relative) {
    return 20 / Math.log(10) * Measurement.COVERAGE_FACTOR * relative;
  }

  /**
   * The standard uncertainty of the mean of some readings, of each of which the noise alone would
   * give {@code fromNoise}. Where the readings scatter more than noise can explain, by chi-square,
   * their own scatter counts (type A, JCGM 100:2008, 4.2), widened for few readings so that twice
   * the result covers 95.45 % (Student's t, annex G).
   *
   * @param delays the delay of each reading
   * @param fromNoise the standard uncertainty of one reading
   */
  public static double ofMean(double[] delays, double fromNoise) {
    int n = delays.length;
    double noiseOnly = fromNoise / Math.sqrt(n);
    if (n == 1) {
      return noiseOnly;
    }
    double squares = squares(delays);
    if (squares <= Quantiles.chiSquareBeyond(Odds.BY_CHANCE, n - 1) * fromNoise * fromNoise) {
      return noiseOnly;
    }
    double covers = Quantiles.studentWithin(Quantiles.TWO_SIGMA, n - 1);
    return covers / Measurement.COVERAGE_FACTOR * Math.sqrt(squares / (n - 1) / n);
  }

  /** The sum of the squared distances from the mean. */
  private static double squares(double[] values) {
    double mean = 0;
    for (double value : values) {
      mean += value / values.length;
    }
    double sum = 0;
    for (double value : values) {
      sum += (value - mean) * (value - mean);
    }
    return sum;
  }
}
