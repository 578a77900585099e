package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.reading.Lazy;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.stats.Odds;
import java.util.List;

/** What the two halves of a window say of a drift within it, beyond one already taken out. */
final class DriftWithin {
  private final Spectra spectra;
  private final Fit both;
  private final Lazy<Fit> first = new Lazy<>(() -> alone(0));
  private final Lazy<Fit> second = new Lazy<>(() -> alone(1));

  /**
   * The drift within a window.
   *
   * @param spectra the correlations of its halves
   * @param both the fit of both at one delay
   */
  DriftWithin(Spectra spectra, Fit both) {
    this.spectra = spectra;
    this.both = both;
  }

  /** By how much the second half is later than the first, in samples; 0 where noise can be why. */
  double further() {
    double roughly = strongest(1).lag() - strongest(0).lag();
    // What one half leaves at the delay of both isn't its noise: only a first look is that cheap.
    return standsOut(roughly, 2 * both.noiseUncertainty())
            && standsOut(apart(), uncertaintyOfApart())
        ? apart()
        : 0;
  }

  /** Whether two delays are likelier than one, beyond doubt, where the noise is normal. */
  private static boolean standsOut(double apart, double uncertainty) {
    return apart * apart > 2 * Odds.BEYOND_DOUBT * uncertainty * uncertainty;
  }

  private double apart() {
    return second.get().measured().lag() - first.get().measured().lag();
  }

  private double uncertaintyOfApart() {
    return Math.hypot(first.get().noiseUncertainty(), second.get().noiseUncertainty());
  }

  /**
   * The standard uncertainty of the delay in the middle that comes from a drift known no better
   * than the halves tell it. Where one half says more than the other, the delay read is that of a
   * moment so far off the middle (derived: each counts by the curvature of its correlation).
   * Infinite where a half is silent: then nothing tells how far the delay drifts through it.
   */
  double uncertainty() {
    double early = curvature(0);
    double late = curvature(1);
    if (early == 0 || late == 0) {
      return Double.POSITIVE_INFINITY;
    }
    return Math.abs(late - early) / (late + early) / 2 * uncertaintyOfApart();
  }

  private double curvature(int half) {
    return Math.abs(spectra.each().get(half).at(both.measured().lag()).curvature());
  }

  private FittedArrival strongest(int half) {
    return spectra.strongest(spectra.each().get(half));
  }

  private Fit alone(int half) {
    Spectra own = Spectra.of(List.of(spectra.readings().get(half)), spectra.searchSeconds());
    return Fit.of(own, List.of(own.strongest()));
  }
}
