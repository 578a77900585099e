package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.PassBand;
import dev.loopgauge.estimate.spectrum.Spectra;

/**
 * A correlation with the reference's own spectrum divided out, as far as noise and the path's band
 * allow (N. Wiener's filter; Knapp and Carter 1976 call it a generalised weighting): what is left
 * of each arrival is one short pulse.
 *
 * @param cross the deconvolved correlation
 * @param pulse what a single arrival of gain 1 at lag 0 would be
 * @param band the magnitude of that in each bin
 */
@SuppressWarnings("ArrayRecordComponent") // made and used up within one fit, never compared
public record Deconvolved(CrossSpectrum cross, CrossSpectrum pulse, double[] band) {
  private static final double PASS_BAND = 0.05;

  /**
   * Sharpens.
   *
   * @param spectra the correlations
   * @param passed the power that the path passes in each bin, around the strongest arrival
   * @param noiseEnergy the energy of all else in the return
   * @param gain the strongest arrival's gain
   */
  static Deconvolved of(Spectra spectra, double[] passed, double noiseEnergy, double gain) {
    double[] weights = PassBand.of(passed);
    double[] band = spectra.auto().magnitudes();
    double gainSquared = gain * gain;
    for (int k = 0; k < weights.length; k++) {
      double share = weights[k] / gainSquared;
      weights[k] = share / (share + PASS_BAND) / (band[k] + noiseEnergy / gainSquared);
      band[k] *= weights[k];
    }
    return new Deconvolved(
        spectra.cross().weighted(weights), spectra.auto().weighted(weights), band);
  }

  /** The height of the pulse. */
  double height() {
    return pulse.at(0).value();
  }

  /** The width of the pulse, in samples: one over the band that it holds. */
  double width() {
    double sum = 0;
    double squares = 0;
    for (double magnitude : band) {
      sum += magnitude;
      squares += magnitude * magnitude;
    }
    return pulse.plan().transform() * squares / (sum * sum);
  }
}
