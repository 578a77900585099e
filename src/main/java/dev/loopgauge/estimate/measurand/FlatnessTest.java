package dev.loopgauge.estimate.measurand;

import dev.loopgauge.stats.Smoother;
import java.util.Arrays;

/**
 * Whether a path is a pure delay and gain as far as a response shows: over the whole audio band one
 * real factor, and but for a rest of delay no imaginary part. Against that stands a smooth curve
 * through each, by the F test; where the curve explains no more than chance would, the path is
 * flat. What a room adds scatters from band to band, and counts as noise.
 */
final class FlatnessTest {
  /** The curve bends as a filter does: about twice in three octaves. */
  private static final double BANDS_PER_PARAMETER = 9;

  private static final double FEWEST_PARAMETERS = 4;

  private static final int FEWEST = 6;

  /** The gain that the correlation gave is off by less than this, as a part, on a flat path. */
  private static final double GAIN_OFF = 0.5;

  /**
   * How far a band of a flat path lies off, in parts or radians, however little noise there is:
   * 0.09 dB, as averaging over a band leaves.
   */
  static final double HARMLESS = 0.01;

  /** One flat path in 10,000 is more uneven in either of two tests, by theory. */
  private static final double BY_CHANCE = 3.72;

  /**
   * By theory 3.72 deviations come once in 10,000 times. Bands of speech and music scatter less
   * evenly than that: of 1,498 flat paths (conformance and cut sound, in small) the largest had
   * 8.1.
   */
  private static final double BEYOND_CHANCE = 9;

  /**
   * How many standard deviations off its peak the envelope of a flat path may lie, its bands being
   * off by their noise and what is harmless: two in 10^9 Gaussian ones do.
   */
  private static final double OFF_PEAK = 6;

  private FlatnessTest() {}

  /**
   * The test.
   *
   * @param all the whole audio band's response
   * @param run the run of its bands that can be followed, at least {@value #FEWEST}
   * @param gain the path's gain, with its sign
   */
  static boolean holds(BandResponse all, BandResponse run, double gain) {
    return deviations(all, gain) < BEYOND_CHANCE
        && (run.bands().size() < FEWEST || holds(run, gain));
  }

  /** Whether chance alone would leave the bands of a flat path as uneven as these, by theory. */
  static boolean isCertain(BandResponse all, BandResponse run, double gain) {
    return deviations(all, gain) < BY_CHANCE
        && (run.bands().size() < FEWEST || ofRun(run, gain) < BY_CHANCE);
  }

  private static boolean holds(BandResponse run, double gain) {
    return ofRun(run, gain) < BEYOND_CHANCE && isAtItsPeak(run);
  }

  /** A flat path is strongest where the plain correlation peaks, but for noise. */
  private static boolean isAtItsPeak(BandResponse run) {
    EnvelopePeak peak = EnvelopePeak.of(run, HARMLESS * HARMLESS);
    return Math.abs(peak.offset()) < OFF_PEAK * peak.standard();
  }

  /** How many normal deviations the path lies off a flat one, the larger of two tests. */
  static double deviations(BandResponse response, double gain) {
    int n = response.bands().size();
    double[] real = new double[n];
    double[] imaginary = new double[n];
    double[] variances = new double[n];
    for (int i = 0; i < n; i++) {
      BandResponse.Band band = response.bands().get(i);
      // From 0, so that a path that passes next to nothing of the band isn't a flat one of gain 0.
      real[i] = band.re() / gain - 1;
      imaginary[i] = band.im() / gain;
      variances[i] = band.power() * band.variance() / (gain * gain);
    }
    double[] one = new double[n];
    Arrays.fill(one, 1);
    return Math.max(
        deviations(real, one, variances, GAIN_OFF),
        deviations(imaginary, response.omegas(), variances));
  }

  /** The same of the run of bands that can be followed, by ln of the magnitude and the phase. */
  static double ofRun(BandResponse run, double gain) {
    double[] one = new double[run.bands().size()];
    Arrays.fill(one, 1);
    double[] phases = run.phases(gain < 0 ? Math.PI : 0);
    return Math.max(
        deviations(run.logMagnitudes(), one, run.variances()),
        deviations(phases, run.omegas(), run.variances()));
  }

  /** The F test of values that are some multiple of a shape, against a smooth curve. */
  private static double deviations(double[] values, double[] shape, double[] noise) {
    return deviations(values, shape, noise, Double.POSITIVE_INFINITY);
  }

  private static double deviations(
      double[] values, double[] shape, double[] noise, double mostFactor) {
    double[] variances = new double[noise.length];
    for (int i = 0; i < variances.length; i++) {
      variances[i] = noise[i] + HARMLESS * HARMLESS;
    }
    double weights = 0;
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      weights += shape[i] * shape[i] / variances[i];
      sum += shape[i] * values[i] / variances[i];
    }
    double factor = Math.max(-mostFactor, Math.min(mostFactor, sum / weights));
    double squares = 0;
    for (int i = 0; i < values.length; i++) {
      squares += Math.pow(values[i] - factor * shape[i], 2) / variances[i];
    }
    double parameters = Math.max(FEWEST_PARAMETERS, values.length / BANDS_PER_PARAMETER);
    Smoother.Curve curve = Smoother.ofParameters(values, variances, parameters);
    return deviations(squares, curve, scatter(values, variances), values.length);
  }

  /** What chance leaves of each value in units of its noise: bands may not be taken for calmer. */
  private static double scatter(double[] values, double[] variances) {
    Smoother.Curve curve = Smoother.through(values, variances);
    return Math.max(1, curve.squares() / Math.max(1, values.length - curve.parameters()));
  }

  /**
   * How many standard deviations beyond its mean F lies, by E. Paulson's approximation ("An
   * approximate normalization of the analysis of variance distribution", Ann. Math. Stat. 13, 1942,
   * from memory).
   */
  private static double deviations(double squares, Smoother.Curve curve, double scatter, int n) {
    double p = curve.parameters() - 1;
    double free = n - curve.parameters();
    double f = (squares - curve.squares()) / p / scatter;
    double cube = Math.cbrt(Math.max(0, f));
    double a = 2 / (9 * p);
    double b = 2 / (9 * free);
    return ((1 - b) * cube - (1 - a)) / Math.sqrt(b * cube * cube + a);
  }
}
