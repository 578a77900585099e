package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.PassBand;
import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.estimate.spectrum.Spectra;

/**
 * The share of the returns' energy that is their references through a filter with the magnitude of
 * a fitted path and no more phase than that needs: what high-pass, low-pass, band-pass, shelf and
 * bell make of it. Another sweep or a room has phases of its own.
 *
 * <p>The phase is the transform of the logarithm's own, with what would come before time 0 folded
 * over (A. V. Oppenheim, R. W. Schafer, "Discrete-Time Signal Processing", on the cepstrum, from
 * memory).
 */
public final class MinimumPhaseShare {
  private MinimumPhaseShare() {}

  /** The share, 0 to 1. */
  public static double of(Spectra spectra, Fit fit) {
    double[] powers = PassBand.of(fit.passed());
    double passed = spectra.auto().weighted(powers).at(0).value();
    CrossSpectrum cross = spectra.cross().against(filter(powers));
    double product = spectra.strongest(cross).gain() * spectra.referenceEnergy();
    return product * product / (passed * spectra.returnEnergy());
  }

  /** The filter of some powers, from bin 0 to half the rate, as a packed spectrum. */
  static double[] filter(double[] powers) {
    int half = powers.length - 1;
    RealFft fft = new RealFft(2 * half);
    double[] phases = minimumPhases(fft, powers);
    double[] filter = new double[2 * half];
    filter[0] = Math.sqrt(powers[0]);
    filter[1] = Math.sqrt(powers[half]);
    for (int k = 1; k < half; k++) {
      double magnitude = Math.sqrt(powers[k]);
      filter[2 * k] = magnitude * Math.cos(phases[2 * k + 1]);
      filter[2 * k + 1] = magnitude * Math.sin(phases[2 * k + 1]);
    }
    return filter;
  }

  /** Packed, the phases as imaginary parts. */
  private static double[] minimumPhases(RealFft fft, double[] powers) {
    int half = powers.length - 1;
    double least = PreFilter.FAINTEST * PeakSearch.most(powers, 0, powers.length);
    double[] packed = new double[2 * half];
    packed[0] = logMagnitude(powers[0], least);
    packed[1] = logMagnitude(powers[half], least);
    for (int k = 1; k < half; k++) {
      packed[2 * k] = logMagnitude(powers[k], least);
    }
    fft.inverse(packed);
    for (int i = 1; i < half; i++) {
      packed[i] *= 2;
      packed[packed.length - i] = 0;
    }
    fft.forward(packed);
    return packed;
  }

  private static double logMagnitude(double power, double least) {
    return Math.log(Math.max(power, least)) / 2;
  }
}
