package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.result.Polarity;
import java.util.Optional;

/**
 * The pure delay of a path, which no filter explains: what is left of the phase once the least
 * phase that belongs to the magnitude is taken out ({@link MinimumPhase}) is a straight line
 * through 0, or half a turn where the path inverts, and its slope is the delay.
 *
 * @param lag the pure delay, in samples
 * @param standard its standard uncertainty, in samples
 * @param polarity the sign that is left, where one is
 */
public record PureDelayFit(double lag, double standard, Optional<Polarity> polarity) {
  /** Averaging over a band leaves a phase off by this much, in radians, whatever the noise. */
  private static final double AVERAGED = 0.01;

  /** The phase's residual is a sign where it lies as near to one as this, in radians. */
  private static final double SIGN = Math.PI / 4;

  /** And stays so over at least this share of the bands. */
  private static final double MOST = 0.75;

  /**
   * How much more the next best number of half turns must leave unexplained: five standard
   * deviations.
   */
  private static final double BEYOND_DOUBT = 25;

  /** Fits a run of bands; empty where it is too short, or so noisy that it may be off by cycles. */
  static Optional<PureDelayFit> of(BandResponse run) {
    double[] omegas = run.omegas();
    double[] variances = run.variances();
    double[] magnitudes = run.logMagnitudes();
    double[] phases = run.phases(0);
    MinimumPhase filter = new MinimumPhase(omegas, variances);
    double[] excess = less(phases, filter.of(magnitudes));
    double[] other = less(phases, new MinimumPhase(omegas).of(magnitudes));
    double[] weights = weights(run);
    PhaseLine line = PhaseLine.through(omegas, weights, excess);
    if (line.ahead() < BEYOND_DOUBT) {
      return Optional.empty();
    }
    double beyond = PhaseLine.through(omegas, weights, other).delay() - line.delay();
    double below =
        run.startsInside() ? moved(omegas, weights, filter.steeperBelow(magnitudes, variances)) : 0;
    double above =
        run.endsInside() ? moved(omegas, weights, filter.steeperAbove(magnitudes, variances)) : 0;
    double outside = Math.hypot(beyond, Math.hypot(below, above));
    double open = Math.hypot(outside, line.open()) / Math.sqrt(3);
    double noise = noise(omegas, weights, variances, filter, line);
    return Optional.of(
        new PureDelayFit(
            run.lag() + line.delay(), Math.hypot(open, noise), polarity(omegas, excess, line)));
  }

  /** How far the line's delay moves with some more phase. */
  private static double moved(double[] omegas, double[] weights, double[] phases) {
    double squares = 0;
    double products = 0;
    for (int i = 0; i < omegas.length; i++) {
      squares += weights[i] * omegas[i] * omegas[i];
      products += weights[i] * omegas[i] * phases[i];
    }
    return -products / squares;
  }

  /** Each band by its noise and by what averaging leaves, which is less the wider the band is. */
  private static double[] weights(BandResponse run) {
    double[] weights = run.taper();
    double[] widths = run.widths();
    double[] variances = run.variances();
    double widest = 0;
    for (double width : widths) {
      widest = Math.max(widest, width);
    }
    for (int i = 0; i < weights.length; i++) {
      double averaged = AVERAGED * AVERAGED * widest / widths[i];
      weights[i] *= weights[i] / (variances[i] + averaged);
    }
    return weights;
  }

  private static double[] less(double[] phases, double[] explained) {
    double[] rest = phases.clone();
    for (int i = 0; i < rest.length; i++) {
      rest[i] -= explained[i];
    }
    return rest;
  }

  /** The standard uncertainty from the bands' noise, in phases and magnitudes, and averaging. */
  private static double noise(
      double[] omegas, double[] weights, double[] variances, MinimumPhase filter, PhaseLine line) {
    double squares = 0;
    double common = 0;
    for (int i = 0; i < omegas.length; i++) {
      squares += weights[i] * omegas[i] * omegas[i];
      common += weights[i] * omegas[i];
    }
    double[] ofPhases = new double[omegas.length];
    for (int i = 0; i < omegas.length; i++) {
      ofPhases[i] = weights[i] * omegas[i] / squares;
    }
    double[] ofMagnitudes = filter.sensitivity(ofPhases);
    double variance = 0;
    for (int i = 0; i < omegas.length; i++) {
      double both = ofPhases[i] * ofPhases[i] + ofMagnitudes[i] * ofMagnitudes[i];
      variance += both * variances[i];
    }
    double scattered = Math.max(variance, line.scatter() / squares);
    return Math.hypot(Math.sqrt(scattered), AVERAGED * common / squares);
  }

  private static Optional<Polarity> polarity(double[] omegas, double[] excess, PhaseLine line) {
    double near = 0;
    for (int i = 0; i < omegas.length; i++) {
      near += Math.abs(line.off(omegas[i], excess[i])) < SIGN ? 1 : 0;
    }
    return near < MOST * omegas.length
        ? Optional.empty()
        : Optional.of(line.halfTurns() % 2 == 0 ? Polarity.NORMAL : Polarity.INVERTED);
  }
}
