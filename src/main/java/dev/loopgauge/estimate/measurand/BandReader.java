package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.measurand.BandResponse.Band;
import dev.loopgauge.estimate.path.Residual;
import dev.loopgauge.estimate.path.ResidualTests;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a path's response in bands of a twelfth of an octave, or of one bin of the short-time
 * spectra where that is wider: in each band the least-squares ratio of return to reference, sum of
 * conj(X) Y over sum of |X|^2. What the reference's spectrum is like drops out.
 */
final class BandReader {
  private static final double PER_BAND = Math.pow(2, 1.0 / 12);

  /** The audio band, in Hz; no converter is trusted above {@link #HIGHEST_PER_RATE}. */
  private static final double LOWEST_HZ = 20;

  private static final double HIGHEST_HZ = 20_000;

  /** Above this part of the rate a converter's own filter shows. */
  private static final double HIGHEST_PER_RATE = 0.42;

  /** Arithmetic moves a phase by this much, in radians squared. */
  private static final double ARITHMETIC = 1e-12;

  /** The octave around a band whose noise counts beside its own. */
  private static final int OCTAVE = 12;

  private final CrossSpectrum cross;
  private final CrossSpectrum auto;
  private final Residual residual;
  private final int[] edges;
  private final double[] noise;

  /**
   * Reads from some spectra.
   *
   * @param cross the correlation, without arrivals that are in the way
   * @param tests what a fit left of the return
   */
  BandReader(Spectra spectra, CrossSpectrum cross, ResidualTests tests) {
    this.cross = cross;
    this.auto = spectra.auto();
    this.residual = tests.residual();
    // A band as narrow as one over what is exact around the delay would hear what lies beyond.
    int narrowest = (int) Math.ceil(2.0 * 2 * residual.bins() / spectra.exact());
    this.edges = edges(residual.bins(), spectra.rate(), Math.max(1, narrowest));
    this.noise = noise(residual, edges, tests.covariation().factor());
  }

  /** The response in the whole audio band, a lag taken out. */
  BandResponse around(double lag) {
    List<Band> all = new ArrayList<>();
    for (int i = 0; i + 1 < edges.length; i++) {
      all.add(band(lag, edges[i], edges[i + 1], noise[i]));
    }
    return BandResponse.whole(lag, all);
  }

  /** The short-time bins that the bands start with, and where the last one ends. */
  private static int[] edges(int bins, SampleRate rate, int narrowest) {
    double highestHz = Math.min(HIGHEST_HZ, HIGHEST_PER_RATE * rate.hertz());
    int end = (int) (highestHz / rate.hertz() * 2 * bins);
    int from = Math.max(1, (int) Math.ceil(LOWEST_HZ / rate.hertz() * 2 * bins));
    List<Integer> edges = new ArrayList<>(List.of(from));
    while (from < end) {
      int to = Math.max(from + narrowest, (int) Math.rint(from * PER_BAND));
      from = to + (to - from) / 2 < end ? to : end;
      edges.add(from);
    }
    int[] array = new int[edges.size()];
    for (int i = 0; i < array.length; i++) {
      array[i] = edges.get(i);
    }
    return array;
  }

  /**
   * The variance of a response for each band and power of its reference: its own, or that of the
   * octave around it where that is more. A sweep meets each band in one block or two, whose noise
   * may be small by chance. Noise that comes with the sound counts as it does for the correlation.
   */
  private static double[] noise(Residual residual, int[] edges, double factor) {
    double[] noise = new double[edges.length - 1];
    for (int i = 0; i < noise.length; i++) {
      int from = edges[Math.max(0, i - OCTAVE / 2)];
      int to = edges[Math.min(noise.length, i + OCTAVE / 2 + 1)];
      double own = noise(residual, edges[i], edges[i + 1]);
      noise[i] = factor * Math.max(own, noise(residual, from, to));
    }
    return noise;
  }

  private static double noise(Residual residual, int from, int to) {
    double power = residual.power(from, to);
    return power > 0 ? residual.valueVariance(from, to) / power : 0;
  }

  private Band band(double lag, int from, int to, double noise) {
    double perBin = Math.PI / residual.bins();
    double scale = cross.plan().transform() / (2.0 * residual.bins());
    int lowest = (int) Math.ceil((from - 0.5) * scale);
    int highest = (int) Math.ceil((to - 0.5) * scale) - 1;
    double[] y = cross.summed(lag, lowest, highest, highest - lowest + 1);
    double[] x = auto.summed(0, lowest, highest, highest - lowest + 1);
    double squares = x[0] * x[0] + x[1] * x[1];
    double re = (y[0] * x[0] + y[1] * x[1]) / squares;
    double im = (y[1] * x[0] - y[0] * x[1]) / squares;
    // Not that of the short blocks, over which a sound that begins or ends at once spreads.
    double power = 2 * Math.sqrt(squares) / cross.plan().transform();
    double variance = noise / power / (re * re + im * im);
    boolean known = variance < Double.POSITIVE_INFINITY;
    return new Band(
        perBin * (from + to - 1) / 2,
        perBin * (to - from),
        known ? re : 0,
        known ? im : 0,
        known ? Math.max(variance, ARITHMETIC) : Double.POSITIVE_INFINITY);
  }
}
