package dev.loopgauge.estimate.measurand;

import dev.loopgauge.stats.Odds;
import java.util.Optional;

/**
 * The phase of an all-pass within some phases, which is what the even sum of a crossover has: of
 * the first order where its branches fall by 12 dB an octave, of the second (Butterworth's) where
 * they fall by 24 (S. P. Lipshitz, J. Vanderkooy, "A family of linear-phase crossover networks", J.
 * Audio Eng. Soc. 31, 1983, from memory). By the bilinear transform it is exact over tan(w / 2).
 *
 * @param order 1 or 2
 * @param corner where it has turned by half of its turn, in radians a sample
 */
record AllPassTurn(int order, double corner) {
  private static final int ORDERS = 2;

  /** Every third band is tried first: a quarter of an octave, over which no turn is a half turn. */
  private static final int STEP = 3;

  private static final int HALVINGS = 12;

  /** Far smaller than a band, far larger than arithmetic's error. */
  private static final double SMALL = 1e-4;

  /**
   * The turn that the phases can't do without; empty where none leaves as little as chance does, or
   * where none, or another order or number of half turns, leaves hardly more.
   *
   * @param plain the line through the phases as they are
   */
  static Optional<AllPassTurn> of(
      double[] omegas, double[] weights, double[] phases, PhaseLine plain) {
    AllPassTurn best = new AllPassTurn(1, omegas[0]);
    PhaseLine line = best.line(omegas, weights, phases);
    double next = plain.left();
    for (int i = 0; i < ORDERS * omegas.length; i += STEP) {
      AllPassTurn turn = new AllPassTurn(1 + i / omegas.length, omegas[i % omegas.length]);
      PhaseLine other = turn.line(omegas, weights, phases);
      boolean better = other.left() < line.left();
      if (turn.order != best.order || other.halfTurns() != line.halfTurns()) {
        next = Math.min(next, better ? line.left() : other.left());
      }
      best = better ? turn : best;
      line = better ? other : line;
    }
    best = best.refined(omegas, weights, phases, line.left());
    line = best.line(omegas, weights, phases);
    double places = Math.log(ORDERS * omegas.length);
    return line.isTold() && next - line.left() > 2 * (Odds.BEYOND_DOUBT + places)
        ? Optional.of(best)
        : Optional.empty();
  }

  /** The corner near this one that leaves least. */
  private AllPassTurn refined(double[] omegas, double[] weights, double[] phases, double left) {
    AllPassTurn best = this;
    double least = left;
    double octaves = STEP / 24.0;
    for (int i = 0; i < HALVINGS; i++) {
      AllPassTurn middle = best;
      for (int way = -1; way <= 1; way += 2) {
        AllPassTurn other = new AllPassTurn(order, middle.corner * Math.pow(2, way * octaves));
        double more = other.line(omegas, weights, phases).left();
        best = more < least ? other : best;
        least = Math.min(least, more);
      }
      octaves /= 2;
    }
    return best;
  }

  private PhaseLine line(double[] omegas, double[] weights, double[] phases) {
    return PhaseLine.through(omegas, weights, without(omegas, phases));
  }

  /** Some phases without it. */
  double[] without(double[] omegas, double[] phases) {
    double[] rest = phases.clone();
    for (int i = 0; i < rest.length; i++) {
      rest[i] -= phase(omegas[i]);
    }
    return rest;
  }

  /** What of a delay's phases, a radian for each frequency, no other corner turns as well. */
  double[] leaves(double[] omegas, double[] weights) {
    double[] bend = new double[omegas.length];
    double squares = 0;
    double products = 0;
    for (int i = 0; i < bend.length; i++) {
      bend[i] = new AllPassTurn(order, corner * (1 + SMALL)).phase(omegas[i]) - phase(omegas[i]);
      squares += weights[i] * bend[i] * bend[i];
      products += weights[i] * bend[i] * omegas[i];
    }
    double[] leaves = omegas.clone();
    for (int i = 0; i < leaves.length; i++) {
      leaves[i] -= products / squares * bend[i];
    }
    return leaves;
  }

  private double phase(double omega) {
    double u = Math.tan(omega / 2) / Math.tan(corner / 2);
    return order == 1 ? -2 * Math.atan(u) : -2 * Math.atan2(Math.sqrt(2) * u, 1 - u * u);
  }
}
