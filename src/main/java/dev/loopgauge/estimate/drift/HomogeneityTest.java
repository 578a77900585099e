package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.reading.InParallel;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Step;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.stats.Odds;
import java.util.List;

/**
 * Whether several readings show one and the same delay, so that their correlations may be added up.
 * A reading disagrees when its own strongest lag is another than the common one, and so much
 * likelier that noise can't be why.
 */
public final class HomogeneityTest {
  private final Spectra spectra;

  /** The homogeneity of the readings behind some correlations. */
  public HomogeneityTest(Spectra spectra) {
    this.spectra = spectra;
  }

  /** Whether all readings agree. */
  public boolean holds() {
    if (spectra.readings().size() == 1) {
      return true;
    }
    double common = spectra.strongest().lag();
    return InParallel.none(spectra.readings().size(), i -> disagrees(i, common));
  }

  private boolean disagrees(int index, double common) {
    CrossSpectrum own = spectra.each().get(index);
    FittedArrival strongest = spectra.strongest(own);
    if (Math.abs(strongest.lag() - common) <= Step.LEAST_SAMPLES) {
      return false;
    }
    double there = own.at(strongest.lag()).value();
    double here = own.at(common).value();
    double variance = unrelated(spectra.readings().get(index), strongest);
    return there * there - here * here > Odds.BEYOND_DOUBT * 2 * variance;
  }

  private double unrelated(Reading reading, FittedArrival arrival) {
    Spectra alone = Spectra.of(List.of(reading), spectra.searchSeconds());
    return Fit.of(alone, List.of(arrival)).residual().unrelatedVariance();
  }
}
