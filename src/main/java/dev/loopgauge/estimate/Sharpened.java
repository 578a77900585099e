package dev.loopgauge.estimate;

/**
 * A correlation with the reference's own spectrum divided out, as far as noise and the path's band
 * allow (N. Wiener's filter; Knapp and Carter 1976 call it a generalised weighting): what is left
 * of each arrival is one short pulse.
 *
 * @param cross the sharpened correlation
 * @param pulse what a single arrival of gain 1 at lag 0 would be
 */
record Sharpened(CrossSpectrum cross, CrossSpectrum pulse) {
  private static final double PASS_BAND = 0.05;

  /**
   * Sharpens.
   *
   * @param spectra the correlations
   * @param passed the power that the path passes in each bin, around the strongest arrival
   * @param noiseEnergy the energy of all else in the return
   * @param gain the strongest arrival's gain
   */
  static Sharpened of(Spectra spectra, double[] passed, double noiseEnergy, double gain) {
    double[] weights = spectra.auto().magnitudes();
    double[] path = PassBand.of(passed);
    double gainSquared = gain * gain;
    for (int k = 0; k < weights.length; k++) {
      double share = path[k] / gainSquared;
      weights[k] = share / (share + PASS_BAND) / (weights[k] + noiseEnergy / gainSquared);
    }
    return new Sharpened(spectra.cross().weighted(weights), spectra.auto().weighted(weights));
  }

  /** The height of the pulse. */
  double height() {
    return pulse.at(0).value();
  }

  /** The width of the pulse, in samples: one over the band that it holds. */
  double width() {
    double sum = 0;
    double squares = 0;
    for (double magnitude : pulse.magnitudes()) {
      sum += magnitude;
      squares += magnitude * magnitude;
    }
    return pulse.plan().transform() * squares / (sum * sum);
  }
}
