package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.path.Residual;
import dev.loopgauge.estimate.path.ResidualTests;
import dev.loopgauge.estimate.result.Passband;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The path's response in bands of a twelfth of an octave, or of one bin of the short-time spectra
 * where that is wider, with a lag taken out: in each band the least-squares ratio of return to
 * reference, sum of conj(X) Y over sum of |X|^2. What the reference's spectrum is like drops out.
 */
public final class BandResponse {
  private static final double PER_BAND = Math.pow(2, 1.0 / 12);

  /** The audio band, in Hz; no converter is trusted above {@link #HIGHEST_PER_RATE}. */
  private static final double LOWEST_HZ = 20;

  private static final double HIGHEST_HZ = 20_000;

  /** Above this part of the rate a converter's own filter shows. */
  private static final double HIGHEST_PER_RATE = 0.42;

  /**
   * A phase of a standard deviation of 0.2 radians can be followed from band to band, and ln of the
   * magnitude is not yet bent by the noise.
   */
  private static final double FOLLOWED = 0.04;

  /** Arithmetic moves a phase by this much, in radians squared. */
  private static final double ARITHMETIC = 1e-12;

  /** A delay that not one band tells is open by this many samples, a second at 48 kHz. */
  private static final double FULLEST = 48_000;

  /** Nothing at all has a logarithm too, so that it can be weighed by nothing. */
  private static final double LEAST = 1e-100;

  private static final int OCTAVE = 12;

  private static final double HALF_OCTAVE = Math.log(2) / 2;

  /** So many bands in a row that can't be followed end the run of those that can. */
  private static final int ENDS = 3;

  /**
   * One band.
   *
   * @param omega its middle, in radians a sample
   * @param width how wide it is, in radians a sample
   * @param re the real part of the response, the lag taken out
   * @param im the imaginary part
   * @param variance of its phase in radians, and of the ln of its magnitude, from noise
   */
  record Band(double omega, double width, double re, double im, double variance) {
    double power() {
      return re * re + im * im;
    }

    double magnitude() {
      return Math.hypot(re, im);
    }

    double phase() {
      return Math.atan2(im, re);
    }
  }

  private final double lag;
  private final List<Band> bands;
  private final boolean startsInside;
  private final boolean endsInside;

  private BandResponse(double lag, List<Band> bands, boolean startsInside, boolean endsInside) {
    this.lag = lag;
    this.bands = List.copyOf(bands);
    this.startsInside = startsInside;
    this.endsInside = endsInside;
  }

  /**
   * The response in the whole audio band.
   *
   * @param exact how far from the lag the correlations are exact, in samples: a band as narrow as
   *     one over that would hear what lies beyond
   */
  static BandResponse of(
      CrossSpectrum cross,
      CrossSpectrum auto,
      ResidualTests tests,
      SampleRate rate,
      double lag,
      int exact) {
    Residual residual = tests.residual();
    int narrowest = (int) Math.ceil(2.0 * 2 * residual.bins() / exact);
    int[] edges = edges(residual.bins(), rate, Math.max(1, narrowest));
    double[] noise = noise(residual, edges, tests.covariation().factor());
    List<Band> all = new ArrayList<>();
    for (int i = 0; i + 1 < edges.length; i++) {
      all.add(band(cross, auto, residual, lag, edges[i], edges[i + 1], noise[i]));
    }
    return new BandResponse(lag, all, false, false);
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

  private static Band band(
      CrossSpectrum cross,
      CrossSpectrum auto,
      Residual residual,
      double lag,
      int from,
      int to,
      double noise) {
    double perBin = Math.PI / residual.bins();
    double scale = cross.plan().transform() / (2.0 * residual.bins());
    int lowest = (int) Math.ceil((from - 0.5) * scale);
    int highest = (int) Math.ceil((to - 0.5) * scale) - 1;
    double[] y = cross.summed(lag, lowest, highest, highest - lowest + 1);
    double[] x = auto.summed(0, lowest, highest, highest - lowest + 1);
    double power = x[0] * x[0] + x[1] * x[1];
    double re = (y[0] * x[0] + y[1] * x[1]) / power;
    double im = (y[1] * x[0] - y[0] * x[1]) / power;
    double variance = noise / residual.power(from, to) / (re * re + im * im);
    boolean known = variance < Double.POSITIVE_INFINITY;
    return new Band(
        perBin * (from + to - 1) / 2,
        perBin * (to - from),
        known ? re : 0,
        known ? im : 0,
        known ? Math.max(variance, ARITHMETIC) : Double.POSITIVE_INFINITY);
  }

  /** The run of bands that stand out of the noise, around the octave that passes most. */
  BandResponse followed() {
    List<Band> all = bands;
    int strongest = strongest(all);
    int from = strongest;
    for (int i = strongest, bad = 0; i >= 0 && bad < ENDS; i--) {
      bad = followed(all.get(i)) ? 0 : bad + 1;
      from = bad == 0 ? i : from;
    }
    int to = strongest;
    for (int i = strongest, bad = 0; i < all.size() && bad < ENDS; i++) {
      bad = followed(all.get(i)) ? 0 : bad + 1;
      to = bad == 0 ? i : to;
    }
    List<Band> run = new ArrayList<>();
    for (Band band : all.subList(from, to + 1)) {
      if (followed(band)) {
        run.add(band);
      }
    }
    return new BandResponse(lag, run, from > 0, to + 1 < all.size());
  }

  private static boolean followed(Band band) {
    return band.variance() < FOLLOWED;
  }

  /** The band that can be followed best in the octave that passes most. */
  private static int strongest(List<Band> all) {
    double[] sums = new double[all.size() + 1];
    for (int i = 0; i < all.size(); i++) {
      Band band = all.get(i);
      double power = followed(band) ? band.power() : 0;
      sums[i + 1] = sums[i] + power;
    }
    int best = 0;
    for (int i = 0; i + OCTAVE < sums.length; i++) {
      if (sums[i + OCTAVE] - sums[i] > sums[best + OCTAVE] - sums[best]) {
        best = i;
      }
    }
    int last = Math.min(best + OCTAVE, all.size());
    int middle = best;
    for (int i = best; i < last; i++) {
      middle = all.get(i).variance() < all.get(middle).variance() ? i : middle;
    }
    return middle;
  }

  /** The lag that is taken out, in samples. */
  double lag() {
    return lag;
  }

  /** The bands, low to high. */
  List<Band> bands() {
    return bands;
  }

  /** Whether the audio band goes on below what can be followed. */
  boolean startsInside() {
    return startsInside;
  }

  /** Whether it goes on above. */
  boolean endsInside() {
    return endsInside;
  }

  /** Some of the bands. */
  BandResponse part(int from, int to) {
    return new BandResponse(lag, bands.subList(from, to), startsInside, endsInside);
  }

  double[] omegas() {
    double[] omegas = new double[bands.size()];
    for (int i = 0; i < omegas.length; i++) {
      omegas[i] = bands.get(i).omega();
    }
    return omegas;
  }

  double[] variances() {
    double[] variances = new double[bands.size()];
    for (int i = 0; i < variances.length; i++) {
      variances[i] = bands.get(i).variance();
    }
    return variances;
  }

  double[] logMagnitudes() {
    double[] logs = new double[bands.size()];
    for (int i = 0; i < logs.length; i++) {
      logs[i] = Math.log(Math.max(LEAST, bands.get(i).magnitude()));
    }
    return logs;
  }

  /** The standard deviation of a delay that may be anywhere within one over the bands' width. */
  double anywhere() {
    double width = 0;
    for (Band band : bands) {
      width += band.width();
    }
    return Math.PI / Math.max(width, Math.PI / FULLEST) / Math.sqrt(3);
  }

  /** From the lowest to the highest frequency, in Hz; empty where there is no band. */
  Optional<Passband> passband(double hertz) {
    if (bands.isEmpty()) {
      return Optional.empty();
    }
    Band lowest = bands.get(0);
    Band highest = bands.get(bands.size() - 1);
    double perOmega = hertz / (2 * Math.PI);
    return Optional.of(
        new Passband(
            perOmega * (lowest.omega() - lowest.width() / 2),
            perOmega * (highest.omega() + highest.width() / 2)));
  }

  double[] widths() {
    double[] widths = new double[bands.size()];
    for (int i = 0; i < widths.length; i++) {
      widths[i] = bands.get(i).width();
    }
    return widths;
  }

  /**
   * The phases in radians, followed from band to band from the one best known.
   *
   * @param near what phases are counted from: 0, or half a turn where the path inverts
   */
  double[] phases(double near) {
    double[] phases = new double[bands.size()];
    int best = 0;
    for (int i = 0; i < phases.length; i++) {
      phases[i] = bands.get(i).phase() - near;
      best = bands.get(i).variance() < bands.get(best).variance() ? i : best;
    }
    phases[best] = nearest(phases[best], 0);
    for (int i = best + 1; i < phases.length; i++) {
      phases[i] = nearest(phases[i], phases[i - 1]);
    }
    for (int i = best - 1; i >= 0; i--) {
      phases[i] = nearest(phases[i], phases[i + 1]);
    }
    return phases;
  }

  private static double nearest(double phase, double to) {
    return phase - 2 * Math.PI * Math.rint((phase - to) / (2 * Math.PI));
  }

  /**
   * How much each band counts within the run: fully inside, and fading over half an octave at
   * either end, so that an edge doesn't ring.
   */
  double[] taper() {
    int last = bands.size() - 1;
    double low = Math.log(bands.get(0).omega() - bands.get(0).width() / 2);
    double high = Math.log(bands.get(last).omega() + bands.get(last).width() / 2);
    double edge = Math.min(HALF_OCTAVE, (high - low) / 2);
    double[] taper = new double[bands.size()];
    for (int i = 0; i < taper.length; i++) {
      double at = Math.log(bands.get(i).omega());
      double inside = Math.max(0, Math.min(1, Math.min(at - low, high - at) / edge));
      taper[i] = 0.5 - 0.5 * Math.cos(Math.PI * inside);
    }
    return taper;
  }
}
