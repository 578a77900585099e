package dev.loopgauge.estimate;

import dev.loopgauge.signal.Decibels;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Finds the copies of the reference in the return besides the strongest: a dry one leaking past the
 * wet one, a doubled patch, a reflection.
 *
 * <p>In the sharpened correlation ({@link Sharpened}) the largest peak is taken, its copy
 * subtracted, and so on (J. Högbom's CLEAN, 1974, from memory), each refined once more with the
 * others gone (J. Li, P. Stoica, "Efficient mixed-spectrum estimation", IEEE Trans. SP-44(2), 1996,
 * from memory).
 */
final class ArrivalSearch {
  /** Fainter copies than this, against the strongest, are not looked for, in dB. */
  private static final double FAINTEST_DB = -30;

  /** How many standard deviations a copy must stand above the rest. */
  private static final double ABOVE_NOISE = 7;

  /** The median magnitude of Gaussian noise, in standard deviations. */
  private static final double MEDIAN_OF_GAUSSIAN = 0.6745;

  private static final int MOST = 16;
  private static final double QUIET_SECONDS = 0.00025;

  private final Spectra spectra;
  private final Copy strongest;
  private final CrossSpectrum sharp;
  private final CrossSpectrum pulse;
  private final double pulseHeight;
  private final double quietEnough;

  /**
   * A search.
   *
   * @param spectra the correlations
   * @param sharpened the sharpened one
   * @param strongest the strongest copy
   */
  ArrivalSearch(Spectra spectra, Sharpened sharpened, Copy strongest) {
    this.spectra = spectra;
    this.strongest = strongest;
    this.sharp = sharpened.cross();
    this.pulse = sharpened.pulse();
    this.pulseHeight = sharpened.height();
    this.quietEnough = Math.max(QUIET_SECONDS * spectra.rate().hertz(), sharpened.width());
  }

  /** All copies, the one given at the start first, the others by falling level. */
  List<Copy> find() {
    double[] whole = spectra.searched(sharp);
    double least = Math.abs(strongest.gain()) * Decibels.toFactor(FAINTEST_DB);
    List<Copy> taken = new ArrayList<>(List.of(atPeak(sharp, strongest.lag())));
    List<Copy> arrivals = new ArrayList<>(List.of(strongest));
    while (taken.size() < MOST) {
      CrossSpectrum rest = sharp.without(taken, pulse);
      double[] lags = spectra.searched(rest);
      int best = PeakSearch.strongest(lags);
      Copy next = atPeak(rest, best - spectra.searchLag());
      if (Math.abs(next.gain()) < Math.max(least, ABOVE_NOISE * deviation(lags) / pulseHeight)) {
        break;
      }
      taken.add(next);
      if (arrivals.stream().allMatch(other -> standsApart(whole, other, next))) {
        arrivals.add(next);
      }
    }
    return arrivals;
  }

  private Copy atPeak(CrossSpectrum curve, double near) {
    CrossSpectrum.Point point = PeakSearch.refine(curve, (int) Math.rint(near));
    return new Copy(point.lag(), point.value() / pulseHeight);
  }

  /**
   * A filter smears an arrival, which is no second one: between two arrivals it is quiet for longer
   * than the arrivals' own width, at less than half of the fainter.
   */
  private boolean standsApart(double[] whole, Copy one, Copy other) {
    double quiet = Math.min(Math.abs(one.gain()), Math.abs(other.gain())) * pulseHeight / 2;
    int from = (int) Math.min(one.lag(), other.lag()) + spectra.searchLag();
    int to = (int) Math.max(one.lag(), other.lag()) + spectra.searchLag();
    int run = 0;
    for (int i = Math.max(from, 0); i <= to && i < whole.length; i++) {
      run = Math.abs(whole[i]) < quiet ? run + 1 : 0;
      if (run >= quietEnough) {
        return true;
      }
    }
    return false;
  }

  private static double deviation(double[] values) {
    double[] sorted = new double[values.length];
    Arrays.setAll(sorted, i -> Math.abs(values[i]));
    Arrays.sort(sorted);
    return sorted[sorted.length / 2] / MEDIAN_OF_GAUSSIAN;
  }
}
