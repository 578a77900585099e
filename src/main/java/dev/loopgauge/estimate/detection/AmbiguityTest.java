package dev.loopgauge.estimate.detection;

import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.stats.Odds;
import java.util.Arrays;
import java.util.Optional;

/**
 * Whether the delay found is the only one that fits. A steady tone, or music that repeats itself,
 * correlates as well one period on. A lag is a rival unless it is less likely than the delay by
 * more than {@link Odds#BEYOND_DOUBT}.
 */
final class AmbiguityTest {
  private final Spectra spectra;
  private final Fit fit;
  private final double best;

  private AmbiguityTest(Spectra spectra, Fit fit) {
    this.spectra = spectra;
    this.fit = fit;
    this.best = fit.peak().lag();
  }

  /**
   * A lag that could just as well be the delay.
   *
   * @param distance how far it is from the delay, in samples
   * @param repeats whether the reference is like itself at that distance; otherwise the return is
   *     as like it there, by chance or by a room's doing
   */
  record Rival(int distance, boolean repeats) {}

  /** A lag that fits as well as the delay. */
  static Optional<Rival> of(Spectra spectra, Fit fit) {
    AmbiguityTest test = new AmbiguityTest(spectra, fit);
    return test.repeat().or(test::elsewhere);
  }

  /**
   * The same for an arrival of a handful of frequencies.
   *
   * @param spectra of references that are what the path passes: they tell how the arrival repeats
   * @param values in how many independent values the arrival shows
   */
  static Optional<Rival> ofNarrow(Spectra spectra, Fit fit, double values) {
    AmbiguityTest test = new AmbiguityTest(spectra, fit);
    return test.repeat().or(() -> test.filtered(values));
  }

  /**
   * A distance by which the reference repeats itself, as far as the return can tell: at a delay
   * that much longer the return would differ by no more than the noise hides. The odds are the
   * energy of that difference over twice the noise's density (derived, as for {@link #elsewhere}).
   */
  private Optional<Rival> repeat() {
    double most = spectra.searchLag() + Math.abs(best);
    double[] auto = spectra.auto().lagsFrom(0, (int) most + 1);
    int from = lobe(auto);
    if (from == auto.length) {
      return Optional.empty();
    }
    SelfDifference self = SelfDifference.nearest(spectra, auto, from);
    double energy = self.share() * fit.peak().value() * fit.peak().value();
    boolean later = best + self.distance() <= spectra.searchLag();
    return self.isKnown() && energy < Odds.BEYOND_DOUBT * 2 * fit.residual().valueVariance()
        ? Optional.of(new Rival(later ? self.distance() : -self.distance(), true))
        : Optional.empty();
  }

  /**
   * A lag beyond the arrival's main lobe at which the correlation is as large: the log-likelihood
   * of a lag, level unknown, is R^2 over twice the variance of R. The peak may lie midway between
   * whole lags, where it is higher, or reach into frequencies that a peak between them leaves out.
   */
  private Optional<Rival> elsewhere() {
    double[] cross = spectra.completed(fit.cleaned());
    int here = spectra.searchedIndex(best);
    double most = Math.max(Math.abs(cross[here]), Math.abs(fit.peak().value()));
    int lobe = lobe(arrival(cross.length));
    Optional<Rival> rival = strongestBeyond(lobe - 1, cross.clone(), here);
    return rival.filter(
        r -> {
          double there = cross[here + r.distance()];
          double variance = fit.residual().valueVariance();
          return most * most - there * there < Odds.BEYOND_DOUBT * 2 * variance;
        });
  }

  /** What the arrival's correlation looks like around its lag, from there on. */
  private double[] arrival(int count) {
    double[] gains = fit.passed().clone();
    Arrays.setAll(gains, k -> Math.sqrt(gains[k]));
    return spectra.auto().weighted(gains).lagsFrom(0, count);
  }

  /**
   * A lag around which a filter explains the return as well as around the delay, of noise of
   * unknown level (derived, as {@link Significance#narrow}): that at which the return is most like
   * the reference, so far off that the two filters have nothing in common.
   */
  private Optional<Rival> filtered(double values) {
    int furthest = spectra.searchLag() + spectra.reach();
    double[] cross = fit.cleaned().lagsFrom(-furthest, 2 * furthest + 1);
    double left = fit.residual().unexplained();
    return strongestBeyond(2 * spectra.reach(), cross, (int) Math.rint(best) + furthest)
        .filter(
            rival -> {
              double less = 1 - fit.shareExplainedAt(best + rival.distance());
              double more = Math.max(0, less * (1 - left) / left);
              return values / 2 * Math.log1p(more) < Odds.BEYOND_DOUBT;
            });
  }

  /** The strongest value that is further from one index than so much; those nearer are lost. */
  private static Optional<Rival> strongestBeyond(int distance, double[] values, int here) {
    int from = Math.max(0, here - distance);
    int to = Math.min(values.length, here + distance + 1);
    if (to - from == values.length) {
      return Optional.empty();
    }
    Arrays.fill(values, from, to, 0);
    return Optional.of(new Rival(PeakSearch.strongest(values) - here, false));
  }

  /** The first lag at which a correlation with itself has stopped falling, or its length. */
  private static int lobe(double[] auto) {
    int lag = 1;
    while (lag < auto.length && Math.abs(auto[lag]) < Math.abs(auto[lag - 1])) {
      lag++;
    }
    return lag;
  }
}
