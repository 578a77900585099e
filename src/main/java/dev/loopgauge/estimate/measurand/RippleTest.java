package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.path.ResidualTests;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.stats.Odds;
import dev.loopgauge.stats.Quantiles;
import java.util.List;

/**
 * Whether several arrivals are what they are taken for. Two of them make the magnitude ripple over
 * frequency; a filter that turns phases alone, as the sum of a crossover does, rings on after its
 * first peak and leaves the magnitude as it is.
 */
public final class RippleTest {
  private RippleTest() {}

  /**
   * The test.
   *
   * @param arrivals at least two, the measured one first
   * @param residual what a fit left of the return
   * @return false where the whole audio band is heard, its magnitude is even but for chance, and
   *     beyond doubt not that of the arrivals
   */
  public static boolean ripple(
      Spectra spectra, List<FittedArrival> arrivals, ResidualTests residual) {
    double lag = loudest(arrivals).lag();
    BandResponse run = new BandReader(spectra, spectra.cross(), residual).around(lag).followed();
    double[] even = run.logMagnitudes();
    double[] rippled = even.clone();
    for (int i = 0; i < rippled.length; i++) {
      rippled[i] -= logMagnitude(arrivals, lag, run.bands().get(i));
    }
    double[] variances = run.variances();
    double ofEven = squares(even, variances);
    double byChance = Quantiles.chiSquareBeyond(Odds.BY_CHANCE, Math.max(1, even.length - 1));
    return run.startsInside()
        || run.endsInside()
        || ofEven > byChance
        || squares(rippled, variances) - ofEven < 2 * Odds.BEYOND_DOUBT;
  }

  private static FittedArrival loudest(List<FittedArrival> arrivals) {
    FittedArrival loudest = arrivals.get(0);
    for (FittedArrival arrival : arrivals) {
      loudest = Math.abs(arrival.gain()) > Math.abs(loudest.gain()) ? arrival : loudest;
    }
    return loudest;
  }

  /** What some arrivals come to within a band, the mean of its frequencies. */
  private static double logMagnitude(
      List<FittedArrival> arrivals, double lag, BandResponse.Band band) {
    double re = 0;
    double im = 0;
    for (FittedArrival arrival : arrivals) {
      double late = arrival.lag() - lag;
      double edge = late * band.width() / 2;
      double mean = arrival.gain() * (edge == 0 ? 1 : Math.sin(edge) / edge);
      re += mean * Math.cos(late * band.omega());
      im -= mean * Math.sin(late * band.omega());
    }
    return Math.log(Math.hypot(re, im));
  }

  /** The squares about the mean, each value by its noise and by what averaging leaves. */
  private static double squares(double[] values, double[] noise) {
    double all = 0;
    double mean = 0;
    for (int i = 0; i < values.length; i++) {
      double weight = 1 / (noise[i] + FlatnessTest.HARMLESS * FlatnessTest.HARMLESS);
      all += weight;
      mean += weight * values[i];
    }
    mean /= all;
    double squares = 0;
    for (int i = 0; i < values.length; i++) {
      double weight = 1 / (noise[i] + FlatnessTest.HARMLESS * FlatnessTest.HARMLESS);
      squares += weight * (values[i] - mean) * (values[i] - mean);
    }
    return squares;
  }
}
