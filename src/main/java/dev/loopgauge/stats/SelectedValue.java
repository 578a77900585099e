package dev.loopgauge.stats;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A Gaussian value that is only told where it lies above a limit. Of values whose mean is near the
 * limit, those are told that chance raised; so the mean is estimated, and its interval found, given
 * that the value was told: the mean m at which a told value is the larger one with a probability p
 * solves Q(value - m) / Q(limit - m) = p (conditional inference after selection; H. Zhong, R. L.
 * Prentice, "Bias-reduced estimators and confidence intervals for odds ratios in genome-wide
 * association studies", Biostatistics 9, 2008, from memory).
 *
 * @param middle the estimate: the mean that is as likely too low as too high
 * @param low the lower end of the interval that covers as often as two standard deviations do
 * @param high its upper end
 */
public record SelectedValue(double middle, double low, double high) {
  /** Further above the limit, by 4 standard deviations, it moves the mean by less than 0.001. */
  private static final double FAR = 6;

  /** Means of which less than one value in a thousand is told aren't considered. */
  private static final double LEAST_TOLD = 3.09;

  private static final double SIDES = 2;
  private static final int HALVINGS = 50;

  /** Loaded where a value is near its limit: few are, and each estimate asks. */
  private static final class Standard {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  }

  /**
   * Of a value.
   *
   * @param value in units of its standard deviation, at least the limit
   * @param limit in the same units
   */
  public static SelectedValue of(double value, double limit) {
    if (value - limit > FAR) {
      return new SelectedValue(value, value - SIDES, value + SIDES);
    }
    double beyond = Standard.NORMAL.survivalProbability(SIDES);
    return new SelectedValue(
        mean(value, limit, 0.5), mean(value, limit, beyond), mean(value, limit, 1 - beyond));
  }

  private static double mean(double value, double limit, double probability) {
    double low = limit - LEAST_TOLD;
    double high = value + SIDES;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      double told = Standard.NORMAL.survivalProbability(limit - middle);
      boolean above = Standard.NORMAL.survivalProbability(value - middle) > probability * told;
      low = above ? low : middle;
      high = above ? middle : high;
    }
    return low;
  }
}
