package dev.loopgauge.estimate.detection;

import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.stats.Odds;
import java.util.Arrays;
import java.util.Optional;

/**
 * Whether the delay found is the only one that fits. A steady tone, or music that repeats itself,
 * correlates as well one period on.
 */
final class AmbiguityTest {
  /** An arrival that is this like itself at another lag doesn't tell the two lags apart. */
  private static final double ALIKE = 0.97;

  /** The same where a handful of frequencies is all there is: hum and drums come near it. */
  private static final double ALIKE_NARROW = 0.6;

  /** Its main lobe goes on as long as it is this like itself: what ripples there is no second. */
  private static final double LOBE_NARROW = 0.5;

  /**
   * How many times its mean power a path is believed to pass anywhere: where the reference holds
   * next to nothing, a fitted filter may come out as anything.
   */
  private static final double BELIEVED = 1000;

  private AmbiguityTest() {}

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
    CrossSpectrum passed = spectra.auto().weighted(believed(spectra, fit));
    double[] cross = spectra.searched(fit.cleaned());
    double[] arrival = passed.lagsFrom(0, cross.length);
    return beyond(mainLobeEnd(arrival), ALIKE, arrival, cross, spectra, fit);
  }

  /** The power that the path passes, as far as there is a reference to tell it by. */
  private static double[] believed(Spectra spectra, Fit fit) {
    double[] powers = fit.passed().clone();
    double[] weights = spectra.auto().magnitudes();
    double sum = 0;
    double mean = 0;
    for (int k = 0; k < powers.length; k++) {
      sum += weights[k];
      mean += weights[k] * powers[k];
    }
    for (int k = 0; k < powers.length; k++) {
      powers[k] = Math.min(powers[k], BELIEVED * mean / sum);
    }
    return powers;
  }

  /**
   * The same for an arrival of a handful of frequencies.
   *
   * @param spectra of references that are what the path passes: they tell how the arrival repeats
   */
  static Optional<Rival> ofNarrow(Spectra spectra, Fit fit) {
    double[] cross = spectra.searched(fit.cleaned());
    double[] arrival = spectra.auto().lagsFrom(0, cross.length);
    return beyond(narrowLobeEnd(arrival), ALIKE_NARROW, arrival, cross, spectra, fit);
  }

  /**
   * How large the correlation must be at another lag for that to fit as well: the log-likelihood of
   * a lag, level unknown, is R^2 over twice the variance of R. Its peak may lie midway between
   * whole lags, where it is higher, or reach into frequencies that a peak between them leaves out.
   */
  private static double close(double nearest, Fit fit) {
    double most = Math.max(Math.abs(nearest), Math.abs(fit.peak().value()));
    return Math.sqrt(
        Math.max(0, most * most - Odds.BEYOND_DOUBT * 2 * fit.residual().valueVariance()));
  }

  private static int narrowLobeEnd(double[] arrival) {
    int lag = 1;
    while (lag < arrival.length && Math.abs(arrival[lag]) > LOBE_NARROW * arrival[0]) {
      lag++;
    }
    return lag;
  }

  /**
   * The lag that could best be the delay besides it, if one could.
   *
   * @param from where the arrival's main lobe ends, in samples
   * @param most how like itself an arrival is at another lag that tells the two apart
   * @param arrival the found arrival's correlation with itself, from lag 0 on
   * @param cross its correlation with the return, at the whole lags of the search
   */
  private static Optional<Rival> beyond(
      int from, double most, double[] arrival, double[] cross, Spectra spectra, Fit fit) {
    int best = spectra.searchedIndex(fit.peak().lag());
    int furthest = Math.max(best, cross.length - 1 - best);
    if (from > furthest) {
      return Optional.empty();
    }
    int repeat = PeakSearch.strongest(arrival, from, furthest + 1);
    if (Math.abs(arrival[repeat]) > most * arrival[0]) {
      return Optional.of(new Rival(best + repeat < cross.length ? repeat : -repeat, true));
    }
    double[] elsewhere = cross.clone();
    Arrays.fill(elsewhere, Math.max(0, best - from + 1), Math.min(cross.length, best + from), 0);
    int rival = PeakSearch.strongest(elsewhere);
    return Math.abs(elsewhere[rival]) > close(cross[best], fit)
        ? Optional.of(new Rival(rival - best, false))
        : Optional.empty();
  }

  /** The first lag at which the coherence has stopped falling. */
  private static int mainLobeEnd(double[] arrival) {
    int lag = 1;
    while (lag < arrival.length && Math.abs(arrival[lag]) < Math.abs(arrival[lag - 1])) {
      lag++;
    }
    return lag;
  }
}
