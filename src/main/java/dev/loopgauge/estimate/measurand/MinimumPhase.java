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

  /** ln of a magnitude is off by this much besides its noise, squared. */
  private static final double UNEVEN = FlatnessTest.HARMLESS * FlatnessTest.HARMLESS;

  private static final double WHOLE = Math.PI * Math.PI / 4;

  /**
   * The steepest slope of ln of a magnitude over u that is reckoned with beyond the band: 24 dB an
   * octave, as the steepest of the usual crossovers has. Common practice, no source.
   */
  private static final double STEEPEST = 4;

  private final double[] u;
  private final double[][] weights;

  /**
   * The relation where the magnitude stays as it is beyond the lowest and the highest frequency.
   *
   * @param omegas rising, above 0 and below pi, in radians a sample; at least two
   */
  MinimumPhase(double[] omegas) {
    this.u = logFrequencies(omegas);
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
    add(Edge.lower(u, variances));
    add(Edge.upper(u, variances));
  }

  private void add(Edge edge) {
    for (int i = 0; i < u.length; i++) {
      double beyond = edge.beyond(u, i);
      for (int j = 0; j < u.length; j++) {
        weights[i][j] += beyond * edge.slope()[j];
      }
    }
  }

  /** The phases that are added if the magnitude falls steeply below the lowest frequency. */
  double[] steeperBelow(double[] logMagnitudes, double[] variances) {
    return steeper(Edge.lower(u, variances), logMagnitudes, 1);
  }

  /** The phases that are added if the magnitude falls steeply above the highest frequency. */
  double[] steeperAbove(double[] logMagnitudes, double[] variances) {
    return steeper(Edge.upper(u, variances), logMagnitudes, -1);
  }

  /**
   * What the steepest slope beyond an edge adds to that of the last octave, if it is less steep.
   */
  private double[] steeper(Edge edge, double[] logMagnitudes, int rises) {
    double slope = 0;
    for (int j = 0; j < u.length; j++) {
      slope += edge.slope()[j] * logMagnitudes[j];
    }
    double more = rises * Math.max(0, STEEPEST - rises * slope);
    double[] phases = new double[u.length];
    for (int i = 0; i < phases.length; i++) {
      phases[i] = more * edge.beyond(u, i);
    }
    return phases;
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

  /** An end of the band: the lowest or the highest place, and the slope of the octave beside it. */
  private static final class Edge {
    private final int at;
    private final double[] slope;

    private Edge(int at, double[] slope) {
      this.at = at;
      this.slope = slope;
    }

    static Edge lower(double[] u, double[] variances) {
      int to = 1;
      while (to < u.length - 1 && u[to] < u[0] + OCTAVE) {
        to++;
      }
      return new Edge(0, slope(u, variances, 0, to));
    }

    static Edge upper(double[] u, double[] variances) {
      int last = u.length - 1;
      int from = last - 1;
      while (from > 0 && u[from] > u[last] - OCTAVE) {
        from--;
      }
      return new Edge(last, slope(u, variances, from, last));
    }

    private static double[] slope(double[] u, double[] variances, int from, int to) {
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
      double[] slope = new double[u.length];
      for (int j = from; j <= to; j++) {
        slope[j] = (u[j] - middle) / squares / (variances[j] + UNEVEN);
      }
      return slope;
    }

    /** What each ln of a magnitude counts in the slope of the last octave, by least squares. */
    double[] slope() {
      return slope;
    }

    /** The phase at a place for each slope of 1 beyond the edge. */
    double beyond(double[] u, int i) {
      return (WHOLE - integral(Math.abs(u[at] - u[i]))) / Math.PI;
    }
  }
}
