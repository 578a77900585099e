package dev.loopgauge.estimate.measurand;

import dev.loopgauge.stats.Odds;
import dev.loopgauge.stats.Quantiles;
import dev.loopgauge.stats.StraightLine;

/**
 * The straight line through some phases that stands at whole half turns at 0, by weighted least
 * squares.
 *
 * <p>What acts on frequencies below these adds a phase that falls as 1 / frequency, and what acts
 * above adds one that grows with the frequency's cube beside a delay: the first terms of any
 * filter's series out there. The line is drawn without such curves; how far it moves once they are
 * allowed is what they leave open.
 *
 * @param delay how far it falls with frequency, in samples
 * @param halfTurns how many half turns it starts at
 * @param open how far the delay moves with either curve, the root of both squares, in samples
 * @param left the weighted squares that line and curves leave
 * @param holds whether chance alone may leave so much; phases that turn within leave more
 * @param ahead how much more the next best number of half turns leaves with the same curves
 */
record PhaseLine(
    double delay, int halfTurns, double open, double left, boolean holds, double ahead) {
  private static final int TRIED = 2;
  private static final int CURVES = 2;

  /** The line, for at least five phases in radians. */
  static PhaseLine through(double[] omegas, double[] weights, double[] phases) {
    double[][] line = {omegas};
    double[] below = power(omegas, -1);
    double[] above = power(omegas, 3);
    double[][] curves = {omegas, below, above};
    int near = near(omegas, weights, phases);
    int halfTurns = near - TRIED;
    PhaseFit best = PhaseFit.of(line, weights, phases, halfTurns);
    for (int turns = halfTurns + 1; turns <= near + TRIED; turns++) {
      PhaseFit fit = PhaseFit.of(line, weights, phases, turns);
      halfTurns = fit.residual() < best.residual() ? turns : halfTurns;
      best = fit.residual() < best.residual() ? fit : best;
    }
    double next = Double.POSITIVE_INFINITY;
    for (int turns = near - TRIED; turns <= near + TRIED; turns++) {
      if (turns != halfTurns) {
        next = Math.min(next, PhaseFit.of(curves, weights, phases, turns).residual());
      }
    }
    PhaseFit curved = PhaseFit.of(curves, weights, phases, halfTurns);
    double withBelow =
        PhaseFit.of(new double[][] {omegas, below}, weights, phases, halfTurns).delay();
    double withAbove =
        PhaseFit.of(new double[][] {omegas, above}, weights, phases, halfTurns).delay();
    double open = Math.hypot(withBelow - best.delay(), withAbove - best.delay());
    double left = curved.residual();
    double byChance = Quantiles.chiSquareBeyond(Odds.BY_CHANCE, phases.length - 1.0 - CURVES);
    return new PhaseLine(best.delay(), halfTurns, open, left, left <= byChance, next - left);
  }

  /** Whether it holds, and no other number of half turns may do so as well. */
  boolean isTold() {
    return holds && ahead > 2 * Odds.BEYOND_DOUBT;
  }

  /** The half turns nearest to where a line that starts anywhere would start. */
  private static int near(double[] omegas, double[] weights, double[] phases) {
    StraightLine free = StraightLine.weighted(omegas, phases, weights);
    return (int) Math.rint((free.middleY() - free.slope() * free.middleX()) / Math.PI);
  }

  private static double[] power(double[] omegas, int exponent) {
    double[] powers = new double[omegas.length];
    for (int i = 0; i < powers.length; i++) {
      powers[i] = Math.pow(omegas[i], exponent);
    }
    return powers;
  }
}
