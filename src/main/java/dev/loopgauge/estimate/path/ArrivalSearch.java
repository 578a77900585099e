package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.stats.Median;
import dev.loopgauge.stats.Odds;
import dev.loopgauge.stats.RobustScatter;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds the arrivals of the reference in the return besides the strongest: a dry one leaking past
 * the wet one, a doubled patch, a reflection.
 *
 * <p>In the deconvolved correlation ({@link Deconvolved}) the largest peak is taken, its arrival
 * subtracted, and so on (J. Högbom's CLEAN, 1974, from memory), each refined once more with the
 * others gone (J. Li, P. Stoica, "Efficient mixed-spectrum estimation", IEEE Trans. SP-44(2), 1996,
 * from memory).
 */
final class ArrivalSearch {
  /**
   * Fainter arrivals than this, against the strongest, are not looked for, in dB. Of 193 returns
   * with two of -3 to -32 dB, 0.1 to 30 ms apart, 103 showed both, without this 120.
   */
  private static final double FAINTEST_DB = -30;

  private static final int MOST = 16;

  /**
   * How long it is quiet between two arrivals. Of 223 returns with one, most of them through a
   * filter, none showed a second, without this 10.
   */
  private static final double QUIET_SECONDS = 0.00025;

  private final Spectra spectra;
  private final FittedArrival strongest;
  private final double deviation;
  private final CrossSpectrum sharp;
  private final CrossSpectrum pulse;
  private final double pulseHeight;
  private final double quietEnough;

  /** How many standard deviations leave no doubt of an arrival at one of the lags (derived). */
  private final double certain;

  /**
   * A search.
   *
   * @param spectra the correlations
   * @param deconvolved the deconvolved one
   * @param strongest the strongest arrival
   * @param deviation the standard deviation of its gain
   */
  ArrivalSearch(
      Spectra spectra, Deconvolved deconvolved, FittedArrival strongest, double deviation) {
    this.spectra = spectra;
    this.strongest = strongest;
    this.deviation = deviation;
    this.sharp = deconvolved.cross();
    this.pulse = deconvolved.pulse();
    this.pulseHeight = deconvolved.height();
    this.quietEnough = Math.max(QUIET_SECONDS * spectra.rate().hertz(), deconvolved.width());
    double lags = 2.0 * spectra.exact() + 1;
    this.certain = Math.sqrt(2 * (Odds.BEYOND_DOUBT + Math.log(lags)));
  }

  /** All arrivals, the one given at the start first, the others by falling level. */
  List<FittedArrival> find() {
    List<FittedArrival> taken = new ArrayList<>(List.of(atPeak(sharp, strongest.lag())));
    List<FittedArrival> arrivals = new ArrayList<>(List.of(strongest));
    while (taken.size() < MOST) {
      CrossSpectrum rest = sharp.without(taken, pulse);
      double[] all = spectra.searched(rest);
      FittedArrival next = atPeak(rest, strongestNear(all) - spectra.searchLag());
      double gain = Math.abs(next.gain());
      if (gain < faintest() || gain < certain * scatter(all) / pulseHeight) {
        break;
      }
      taken.add(next);
      if (standsApart(arrivals, next)) {
        arrivals.add(next);
      }
    }
    return arrivals.size() == 1 ? arrivals : proven(arrivals);
  }

  private static double scatter(double[] lags) {
    return RobustScatter.ofMedianMagnitude(Median.magnitude(lags));
  }

  private boolean standsApart(List<FittedArrival> arrivals, FittedArrival next) {
    double[] whole = spectra.searched(sharp);
    for (FittedArrival other : arrivals) {
      if (!standsApart(whole, other, next)) {
        return false;
      }
    }
    return true;
  }

  /**
   * The arrivals that are still there when all are fitted at once to the plain correlation. Where
   * the sound holds little else than some notes, sharpening makes peaks of next to nothing.
   */
  private List<FittedArrival> proven(List<FittedArrival> arrivals) {
    List<FittedArrival> left = new ArrayList<>(arrivals);
    for (int doubtful = doubtful(left); doubtful > 0; doubtful = doubtful(left)) {
      left.remove(doubtful);
    }
    return left;
  }

  /**
   * Which arrival falls furthest short of what would prove it; 0, the strongest, where none does.
   */
  private int doubtful(List<FittedArrival> arrivals) {
    MutualUncertainty overlap = new MutualUncertainty(spectra.auto(), arrivals);
    double[] gains = overlap.gains(spectra.cross());
    int weakest = 0;
    double most = 1;
    for (int i = 1; i < arrivals.size(); i++) {
      double needed = Math.max(faintest(), certain * deviation * overlap.gainWidening(i));
      if (needed > most * Math.abs(gains[i])) {
        weakest = i;
        most = needed / Math.abs(gains[i]);
      }
    }
    return weakest;
  }

  /** The strongest of the lags at which an arrival can be told from an edge. */
  private int strongestNear(double[] all) {
    double here = strongest.lag() + spectra.searchLag();
    int from = (int) Math.max(0, Math.ceil(here - spectra.exact()));
    int to = (int) Math.min(all.length, Math.floor(here + spectra.exact()) + 1);
    return PeakSearch.strongest(all, from, to);
  }

  private double faintest() {
    return Math.abs(strongest.gain()) * Decibels.toFactor(FAINTEST_DB);
  }

  private FittedArrival atPeak(CrossSpectrum curve, double near) {
    CrossSpectrum.Point point = PeakSearch.refine(curve, near);
    return new FittedArrival(point.lag(), point.value() / pulseHeight);
  }

  /**
   * A filter smears an arrival, which is no second one: between two arrivals it is quiet for longer
   * than the arrivals' own width, at less than half of the fainter.
   */
  private boolean standsApart(double[] whole, FittedArrival one, FittedArrival other) {
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
}
