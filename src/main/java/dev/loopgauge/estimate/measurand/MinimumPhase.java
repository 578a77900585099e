package dev.loopgauge.estimate.measurand;

/**
 * The phase that belongs to a magnitude where a path delays no more than that magnitude needs: what
 * a filter made of resistors, or its digital counterpart, has.
 *
 * <p>Bode's relation: phase(u0) = 1/pi times the integral of d ln|H| / du times ln coth(|u - u0| /
 * 2) over u = ln frequency (H. W. Bode, "Network Analysis and Feedback Amplifier Design", 1945,
 * chapter 14, from memory). The bilinear transform maps a digital filter's frequency w to tan(w /
 * 2), so with u = ln tan(w / 2) it holds exactly there too. ln|H| is taken to run straight between
 * the frequencies at which it is known, so that each straight piece is integrated in closed form.
 */
final class MinimumPhase {
  /** Over how much of u, an octave, the slope at an edge of the band is read. */
  private static final double OCTAVE = Math.log(2);

  /** How far ln of a filter's magnitude lies off a straight slope over an octave, squared. */
  private static final double UNEVEN = 0.01;

  private static final double WHOLE = Math.PI * Math.PI / 4;

  private final double[][] weights;

  /**
   * The relation where the magnitude stays as it is beyond the lowest and the highest frequency.
   *
   * @param omegas rising, above 0 and below pi, in radians a sample; at least two
   */
  MinimumPhase(double[] omegas) {
    double[] u = logFrequencies(omegas);
    int n = u.length;
    this.weights = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j + 1 < n; j++) {
        double share = between(u[j] - u[i], u[j + 1] - u[i]) / (u[j + 1] - u[j]) / Math.PI;
        weights[i][j + 1] += share;
        weights[i][j] -= share;
      }
    }
  }

  /**
   * The relation where the slope of the last octave at either end goes on beyond it.
   *
   * @param variances the variance of ln of the magnitude at each frequency
   */
  MinimumPhase(double[] omegas, double[] variances) {
    this(omegas);
    double[] u = logFrequencies(omegas);
    int last = u.length - 1;
    addSlope(u, variances, 0, firstBeyond(u, u[0] + OCTAVE), 0);
    addSlope(u, variances, lastBefore(u, u[last] - OCTAVE), last, last);
  }

  private static double[] logFrequencies(double[] omegas) {
    double[] logs = new double[omegas.length];
    for (int i = 0; i < logs.length; i++) {
      logs[i] = Math.log(Math.tan(omegas[i] / 2));
    }
    return logs;
  }

  /** The phase in radians at each frequency, from ln of the magnitude there. */
  double[] of(double[] logMagnitudes) {
    double[] phases = new double[weights.length];
    for (int i = 0; i < phases.length; i++) {
      for (int j = 0; j < phases.length; j++) {
        phases[i] += weights[i][j] * logMagnitudes[j];
      }
    }
    return phases;
  }

  /** By how much a weighted sum of the phases changes with each ln of a magnitude. */
  double[] sensitivity(double[] factors) {
    double[] sums = new double[weights.length];
    for (int i = 0; i < sums.length; i++) {
      for (int j = 0; j < sums.length; j++) {
        sums[j] += factors[i] * weights[i][j];
      }
    }
    return sums;
  }

  private static int firstBeyond(double[] u, double from) {
    int i = 1;
    while (i < u.length - 1 && u[i] < from) {
      i++;
    }
    return i;
  }

  private static int lastBefore(double[] u, double to) {
    int i = u.length - 2;
    while (i > 0 && u[i] > to) {
      i--;
    }
    return i;
  }

  /** Adds what the slope from one place to another, by least squares, does beyond an edge. */
  private void addSlope(double[] u, double[] variances, int from, int to, int edge) {
    double all = 0;
    double middle = 0;
    for (int j = from; j <= to; j++) {
      all += 1 / (variances[j] + UNEVEN);
      middle += u[j] / (variances[j] + UNEVEN);
    }
    middle /= all;
    double squares = 0;
    for (int j = from; j <= to; j++) {
      squares += (u[j] - middle) * (u[j] - middle) / (variances[j] + UNEVEN);
    }
    for (int i = 0; i < u.length; i++) {
      double beyond = (WHOLE - integral(Math.abs(u[edge] - u[i]))) / Math.PI;
      for (int j = from; j <= to; j++) {
        weights[i][j] += beyond * (u[j] - middle) / squares / (variances[j] + UNEVEN);
      }
    }
  }

  private static double between(double from, double to) {
    return signed(to) - signed(from);
  }

  private static double signed(double x) {
    return x < 0 ? -integral(-x) : integral(x);
  }

  /** The integral of ln coth(u / 2) from 0 to x, 0 or more; pi^2 / 4 to infinity. */
  static double integral(double x) {
    if (x == 0) {
      return 0;
    }
    if (x < 0.5) {
      // ln coth(u / 2) = -ln(u / 2) + u^2 / 12 - 7 u^4 / 1440 + 31 u^6 / 90720 - ...
      double x2 = x * x;
      return x * (1 - Math.log(x / 2) + x2 * (1 / 36.0 - x2 * (7 / 7200.0 - x2 * 31 / 635040.0)));
    }
    // ln coth(u / 2) = 2 (e^-u + e^-3u / 3 + e^-5u / 5 + ...)
    double sum = 0;
    double power = Math.exp(-x);
    double ratio = power * power;
    for (int k = 1; power > 1e-17; k += 2) {
      sum += power / ((double) k * k);
      power *= ratio;
    }
    return WHOLE - 2 * sum;
  }
}
