package dev.loopgauge.estimate.measurand;

/**
 * The straight line through some phases that stands at whole half turns at 0, by weighted least
 * squares. Phases that slipped by whole turns count as they are nearest to the line.
 *
 * @param delay how far it falls with frequency, in samples
 * @param halfTurns how many half turns it starts at
 * @param scatter the weighted squares that it leaves, for each phase but one; 1 at least
 * @param ahead how much more the next best number of half turns leaves, in units of that
 */
record PhaseLine(double delay, int halfTurns, double scatter, double ahead) {
  private static final int TRIED = 2;
  private static final int PASSES = 4;

  /** The line, for at least two phases in radians. */
  static PhaseLine through(double[] omegas, double[] weights, double[] phases) {
    int near = near(omegas, weights, phases);
    Fitted best = null;
    Fitted next = null;
    for (int turns = near - TRIED; turns <= near + TRIED; turns++) {
      Fitted fitted = Fitted.of(omegas, weights, phases, turns);
      if (best == null || fitted.left() < best.left()) {
        next = best;
        best = fitted;
      } else if (next == null || fitted.left() < next.left()) {
        next = fitted;
      }
    }
    double scatter = Math.max(1, best.left() / Math.max(1, phases.length - 1));
    return new PhaseLine(
        -best.slope(), best.turns(), scatter, (next.left() - best.left()) / scatter);
  }

  /** How far off the line a phase lies, in radians, whole turns left out. */
  double off(double omega, double phase) {
    return wrapped(phase - halfTurns * Math.PI + delay * omega);
  }

  private static double wrapped(double phase) {
    return phase - 2 * Math.PI * Math.rint(phase / (2 * Math.PI));
  }

  /** The half turns nearest to where a line that starts anywhere would start. */
  private static int near(double[] omegas, double[] weights, double[] phases) {
    double all = 0;
    double omega = 0;
    double phase = 0;
    for (int i = 0; i < omegas.length; i++) {
      all += weights[i];
      omega += weights[i] * omegas[i];
      phase += weights[i] * phases[i];
    }
    double squares = 0;
    double products = 0;
    for (int i = 0; i < omegas.length; i++) {
      double off = omegas[i] - omega / all;
      squares += weights[i] * off * off;
      products += weights[i] * off * phases[i];
    }
    return (int) Math.rint((phase - products / squares * omega) / all / Math.PI);
  }

  /** A line from so many half turns, and the weighted squares that it leaves: 2 (1 - cos). */
  private record Fitted(int turns, double slope, double left) {
    static Fitted of(double[] omegas, double[] weights, double[] phases, int turns) {
      double squares = 0;
      double[] rest = phases.clone();
      for (int i = 0; i < rest.length; i++) {
        rest[i] -= turns * Math.PI;
        squares += weights[i] * omegas[i] * omegas[i];
      }
      double slope = 0;
      for (int pass = 0; pass < PASSES; pass++) {
        double products = 0;
        for (int i = 0; i < rest.length; i++) {
          products += weights[i] * omegas[i] * rest[i];
        }
        slope += products / squares;
        for (int i = 0; i < rest.length; i++) {
          rest[i] = wrapped(phases[i] - turns * Math.PI - slope * omegas[i]);
        }
      }
      double left = 0;
      for (int i = 0; i < rest.length; i++) {
        left += weights[i] * 2 * (1 - Math.cos(rest[i]));
      }
      return new Fitted(turns, slope, left);
    }
  }
}
