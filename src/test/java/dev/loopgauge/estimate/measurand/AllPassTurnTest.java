package dev.loopgauge.estimate.measurand;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Turns within phases that are made up, in bands of a twelfth of an octave. */
class AllPassTurnTest {
  private static final double[] OMEGAS =
      IntStream.range(0, 84).mapToDouble(i -> 0.02 * Math.pow(2, i / 12.0)).toArray();
  private static final double NOISE = 0.02;

  private static double[] phases(DoubleUnaryOperator phase, double noise, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    return Arrays.stream(OMEGAS)
        .map(omega -> phase.applyAsDouble(omega) + noise * random.nextGaussian())
        .toArray();
  }

  private static Optional<AllPassTurn> turn(double[] phases, double noise) {
    double[] weights = weights(noise);
    PhaseLine plain = PhaseLine.through(OMEGAS, weights, phases);
    return AllPassTurn.of(OMEGAS, weights, phases, plain);
  }

  private static double[] weights(double noise) {
    double[] weights = new double[OMEGAS.length];
    Arrays.fill(weights, 1 / (noise * noise));
    return weights;
  }

  /** The phase of a bilinear all-pass, written as the product of its factors. */
  private static double allPass(int order, double corner, double omega) {
    double u = Math.tan(omega / 2) / Math.tan(corner / 2);
    return order == 1
        ? -2 * Math.atan(u)
        : -2 * (Math.atan(Math.sqrt(2) * u + 1) + Math.atan(Math.sqrt(2) * u - 1));
  }

  @ParameterizedTest
  @CsvSource({"1, 0.1", "1, 0.5", "2, 0.1", "2, 0.5"})
  void isFoundWhereItIs(int order, double corner) {
    for (long seed = 0; seed < 5; seed++) {
      double[] phases = phases(omega -> allPass(order, corner, omega) - 1.5 * omega, NOISE, seed);
      AllPassTurn turn = turn(phases, NOISE).orElseThrow();
      assertEquals(order, turn.order());
      assertEquals(corner, turn.corner(), 0.02 * corner);
      double[] weights = weights(NOISE);
      PhaseLine line = PhaseLine.through(OMEGAS, weights, turn.without(OMEGAS, phases));
      assertEquals(1.5, line.delay(), 0.05);
    }
  }

  @Test
  void isNotFoundInAStraightLine() {
    for (long seed = 0; seed < 5; seed++) {
      assertTrue(turn(phases(omega -> Math.PI - 1.5 * omega, NOISE, seed), NOISE).isEmpty());
    }
  }

  @Test
  void isNotFoundWhereTwoTurn() {
    for (long seed = 0; seed < 5; seed++) {
      DoubleUnaryOperator both = omega -> allPass(2, 0.05, omega) + allPass(2, 0.8, omega);
      assertTrue(turn(phases(both, NOISE, seed), NOISE).isEmpty());
    }
  }

  /** In so much noise a line with the curves leaves as little. */
  @Test
  void isNotFoundWhereNoiseMayBeAll() {
    for (long seed = 0; seed < 5; seed++) {
      assertTrue(turn(phases(omega -> allPass(1, 0.1, omega), 2, seed), 2).isEmpty());
    }
  }
}
