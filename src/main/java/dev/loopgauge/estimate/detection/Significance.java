package dev.loopgauge.estimate.detection;

import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.path.Residual;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.stats.Median;
import java.util.OptionalDouble;

/** How far what was fitted stands above what unrelated sound would give. */
final class Significance {
  /**
   * How many standard deviations the correlation must stand above what unrelated signals with the
   * same spectra give. Among 200,000 lags unrelated Gaussian noise passes 8 once in 4 * 10^9 times.
   */
  private static final double TRUSTED = 8;

  /** How many times the median of all lags a deconvolved correlation stands out by. */
  private static final double STANDS_OUT = 24;

  /**
   * Weight of the coherence statistic relative to the correlation statistic: notes that are held
   * keep their phase from block to block, and unrelated music in one key came to 8 of them once in
   * 5600 evenings.
   */
  private static final double COHERENCE_WEIGHT = 0.8;

  private final Spectra spectra;
  private final Fit fit;
  private OptionalDouble value = OptionalDouble.empty();

  /** The significance of a fit. */
  Significance(Spectra spectra, Fit fit) {
    this.spectra = spectra;
    this.fit = fit;
  }

  /** Whether it is enough. */
  boolean isTrusted() {
    return value() >= TRUSTED;
  }

  /**
   * How many standard deviations the measured arrival stands above unrelated sound: as it is, or
   * with all frequencies counting alike, whichever shows it better. The first serves faint returns
   * in noise, the second speech and music, whose power lies in few frequencies. Where a handful of
   * frequencies is all that is in common, as of a hum in both, the first proves nothing; where the
   * deconvolved correlation is as large elsewhere, as of other music in the same key, the second.
   */
  double value() {
    if (value.isEmpty()) {
      value = OptionalDouble.of(find());
    }
    return value.getAsDouble();
  }

  private double find() {
    double plain = fit.isNarrow() ? 0 : plain();
    boolean enough = plain >= TRUSTED || !standsOut();
    return enough
        ? plain
        : Math.max(plain, COHERENCE_WEIGHT * fit.residualTests().coherence().significance());
  }

  /**
   * The same as it is, however few frequencies it lies in. Sound that is loud when the reference is
   * gets further by chance.
   */
  double plain() {
    double factor = fit.residualTests().covariation().factor();
    double variance = fit.residual().unrelatedVariance() * factor;
    return variance == 0 ? 0 : Math.abs(fit.peak().value()) / Math.sqrt(variance);
  }

  /** The height of the peak from which on {@link #plain} is trusted; 0 where it doesn't count. */
  double leastTrusted() {
    double variance =
        fit.residual().unrelatedVariance() * fit.residualTests().covariation().factor();
    return fit.isNarrow() ? 0 : TRUSTED * Math.sqrt(variance);
  }

  private boolean standsOut() {
    double[] lags = spectra.searched(fit.deconvolved().cross());
    double here = Math.abs(lags[spectra.searchedIndex(fit.peak().lag())]);
    return here > STANDS_OUT * Median.magnitude(lags);
  }

  /**
   * How much likelier than unrelated sound an arrival in few frequencies is, as a logarithm, told
   * by how little it leaves of the return: noise in n values would be explained as well once in
   * exp(n / 2 ln(1 / left)) times (the likelihood ratio of Gaussian noise of unknown level;
   * derived). That n is the square of the plain significance, less what the fitted filter can
   * follow.
   */
  double narrow() {
    return values() / 2 * Math.max(0, -Math.log(fit.residual().unexplained()));
  }

  /** In how many independent values an arrival in few frequencies shows. */
  double values() {
    Residual residual = fit.residual();
    double followed = residual.effectiveBins() * 2 * spectra.reach() / residual.bins();
    return Math.max(0, Math.pow(plain(), 2) - followed);
  }
}
