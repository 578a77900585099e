package dev.loopgauge.estimate.measurand;

/**
 * Where the envelope of some bands' sum is largest: |sum of a e^(j (phase + w t))| over the bands.
 *
 * @param offset the t at which it is, in samples after the lag that was taken out of the phases
 * @param standard the standard uncertainty of the offset, from the bands' own noise, in samples
 */
record EnvelopePeak(double offset, double standard) {
  /** Steps of the first look, in parts of one over the bandwidth. */
  private static final double GRID = 0.15;

  /** Further off, the phase turns within a band by so much that it no longer adds up. */
  private static final double REACH = 0.4;

  private static final int STEPS = 30;

  /**
   * The peak nearest to the lag that was taken out.
   *
   * @param omegas the bands' middles, radians a sample
   * @param widths how wide they are, radians a sample
   * @param amplitudes what each counts
   * @param phases the phase of each, radians
   * @param variances the variance of the phase of each, and of ln of its amplitude
   */
  static EnvelopePeak of(
      double[] omegas, double[] widths, double[] amplitudes, double[] phases, double[] variances) {
    double all = 0;
    double width = 0;
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (int i = 0; i < omegas.length; i++) {
      all += amplitudes[i];
      width += amplitudes[i] * widths[i];
      least = Math.min(least, omegas[i]);
      most = Math.max(most, omegas[i] + widths[i]);
    }
    double reach = REACH * 2 * Math.PI * all / width;
    double step = GRID * 2 * Math.PI / (most - least);
    Sum sum = new Sum(omegas, amplitudes, phases);
    double best = 0;
    double highest = 0;
    for (double t = -reach; t <= reach; t += step) {
      sum.at(t);
      if (sum.power() > highest) {
        highest = sum.power();
        best = t;
      }
    }
    for (int i = 0; i < STEPS; i++) {
      sum.at(best);
      double move = Math.max(-step, Math.min(step, sum.newtonStep()));
      best += move;
      if (Math.abs(move) < 1e-7) {
        break;
      }
    }
    sum.at(best);
    return new EnvelopePeak(best, sum.standard(variances));
  }

  /** When the response of a run of bands is strongest, all frequencies of it counting alike. */
  static EnvelopePeak of(BandResponse run) {
    return of(run, 0);
  }

  /**
   * The same of bands that are off by more than their noise.
   *
   * @param uneven the variance of that, of the phase and of ln of the magnitude
   */
  static EnvelopePeak of(BandResponse run, double uneven) {
    double[] amplitudes = run.taper();
    for (int i = 0; i < amplitudes.length; i++) {
      BandResponse.Band band = run.bands().get(i);
      amplitudes[i] *= band.width() * band.magnitude();
    }
    double[] variances = run.variances();
    for (int i = 0; i < variances.length; i++) {
      variances[i] += uneven;
    }
    return of(run.omegas(), run.widths(), amplitudes, run.phases(0), variances);
  }

  /** The bands' sum with its first and second derivative by t. */
  private static final class Sum {
    private final double[] omegas;
    private final double[] amplitudes;
    private final double[] phases;
    private double re;
    private double im;
    private double re1;
    private double im1;
    private double re2;
    private double im2;

    Sum(double[] omegas, double[] amplitudes, double[] phases) {
      this.omegas = omegas;
      this.amplitudes = amplitudes;
      this.phases = phases;
    }

    void at(double t) {
      re = 0;
      im = 0;
      re1 = 0;
      im1 = 0;
      re2 = 0;
      im2 = 0;
      for (int i = 0; i < omegas.length; i++) {
        double w = omegas[i];
        double x = amplitudes[i] * Math.cos(phases[i] + w * t);
        double y = amplitudes[i] * Math.sin(phases[i] + w * t);
        re += x;
        im += y;
        re1 -= w * y;
        im1 += w * x;
        re2 -= w * w * x;
        im2 -= w * w * y;
      }
    }

    double power() {
      return re * re + im * im;
    }

    private double curvature() {
      return re1 * re1 + im1 * im1 + re * re2 + im * im2;
    }

    double newtonStep() {
      double slope = re * re1 + im * im1;
      double curvature = curvature();
      return curvature < 0 ? -slope / curvature : 0;
    }

    /** From d(slope) = Re(d(sum) conj(sum') + conj(sum) d(sum')), each band's noise by itself. */
    double standard(double[] variances) {
      double variance = 0;
      for (int i = 0; i < omegas.length; i++) {
        double real = re1 + omegas[i] * im;
        double imaginary = -im1 + omegas[i] * re;
        double amplitude = amplitudes[i] * amplitudes[i];
        variance += amplitude * variances[i] * (real * real + imaginary * imaginary);
      }
      return Math.sqrt(variance) / Math.abs(curvature());
    }
  }
}
