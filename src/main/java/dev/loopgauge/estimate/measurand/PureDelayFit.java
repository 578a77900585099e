package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.result.Polarity;
import java.util.Optional;

/**
 * The pure delay of a path, which no filter explains: what is left of the phase once the least
 * phase that belongs to the magnitude is taken out ({@link MinimumPhase}) is a straight line
 * through 0, or half a turn where the path inverts, and its slope is the delay. Where phases turn
 * within the band so that no line holds, the turn of an all-pass is taken out too.
 *
 * @param lag the pure delay, in samples
 * @param standard its standard uncertainty, in samples
 * @param polarity the sign that is left; an all-pass may have two
 */
public record PureDelayFit(double lag, double standard, Polarity polarity) {
  /** Averaging over a band leaves a phase off by this much, in radians, whatever the noise. */
  private static final double AVERAGED = FlatnessTest.HARMLESS;

  /**
   * Fits a run of bands; empty where phases turn within it as no single all-pass does, or where it
   * is so noisy that they may be off by half turns.
   */
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
    Optional<AllPassTurn> turn =
        line.holds() ? Optional.empty() : AllPassTurn.of(omegas, weights, excess, line);
    if (turn.isPresent()) {
      line = PhaseLine.through(omegas, weights, turn.get().without(omegas, excess));
      other = turn.get().without(omegas, other);
    }
    if (!line.isTold()) {
      return Optional.empty();
    }
    double beyond = PhaseLine.through(omegas, weights, other).delay() - line.delay();
    double below =
        run.startsInside() ? moved(omegas, weights, filter.steeperBelow(magnitudes, variances)) : 0;
    double above =
        run.endsInside() ? moved(omegas, weights, filter.steeperAbove(magnitudes, variances)) : 0;
    double outside = Math.hypot(beyond, Math.hypot(below, above));
    double open = Math.hypot(outside, line.open()) / Math.sqrt(3);
    double[] alone = turn.isPresent() ? turn.get().leaves(omegas, weights) : omegas;
    double noise = noise(omegas, weights, variances, filter, alone);
    Polarity sign = line.halfTurns() % 2 == 0 ? Polarity.NORMAL : Polarity.INVERTED;
    return Optional.of(
        new PureDelayFit(
            run.lag() + line.delay(),
            Math.hypot(open, noise),
            turn.isPresent() ? Polarity.UNDETERMINED : sign));
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

  /**
   * The standard uncertainty from the bands' noise, in phases and magnitudes, and averaging.
   *
   * @param alone what of the frequencies is like nothing else that was fitted
   */
  private static double noise(
      double[] omegas, double[] weights, double[] variances, MinimumPhase filter, double[] alone) {
    double[] ofPhases = new double[omegas.length];
    double squares = 0;
    double common = 0;
    for (int i = 0; i < omegas.length; i++) {
      ofPhases[i] = weights[i] * alone[i];
      squares += ofPhases[i] * omegas[i];
      common += ofPhases[i];
    }
    double[] ofMagnitudes = filter.sensitivity(ofPhases);
    double variance = 0;
    for (int i = 0; i < omegas.length; i++) {
      double both = ofPhases[i] * ofPhases[i] + ofMagnitudes[i] * ofMagnitudes[i];
      variance += both * variances[i];
    }
    return Math.hypot(Math.sqrt(variance), AVERAGED * common) / squares;
  }
}
