package dev.loopgauge.estimate.measurand;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines through phases that are made up, in bands of a twelfth of an octave. */
class PhaseLineTest {
  private static final double[] OMEGAS =
      IntStream.range(0, 84).mapToDouble(i -> 0.02 * Math.pow(2, i / 12.0)).toArray();
  private static final double NOISE = 0.02;

  private static PhaseLine through(DoubleUnaryOperator phase, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] weights = new double[OMEGAS.length];
    Arrays.fill(weights, 1 / (NOISE * NOISE));
    double[] phases =
        Arrays.stream(OMEGAS)
            .map(omega -> phase.applyAsDouble(omega) + NOISE * random.nextGaussian())
            .toArray();
    return PhaseLine.through(OMEGAS, weights, phases);
  }

  @ParameterizedTest
  @ValueSource(ints = {-2, -1, 0, 1, 2})
  void readsDelayAndHalfTurns(int halfTurns) {
    for (long seed = 0; seed < 20; seed++) {
      PhaseLine line = through(omega -> halfTurns * Math.PI - 1.5 * omega, seed);
      assertEquals(1.5, line.delay(), 0.02);
      assertEquals(halfTurns, line.halfTurns());
      assertTrue(line.isTold(), line.toString());
      assertTrue(line.open() < 0.05, line.toString());
    }
  }

  /** Over two thirds of an octave half a turn is made up for by the curves, but for such noise. */
  @Test
  void isNotToldOfTooFewPhases() {
    double[] few = Arrays.copyOf(OMEGAS, 8);
    double[] weights = new double[few.length];
    Arrays.fill(weights, 1 / (NOISE * NOISE));
    double[] phases = Arrays.stream(few).map(omega -> -1.5 * omega).toArray();
    PhaseLine line = PhaseLine.through(few, weights, phases);
    assertTrue(line.holds(), line.toString());
    assertFalse(line.isTold(), line.toString());
  }

  @Test
  void leavesOpenWhatCurvesFromOutsideTheBandMove() {
    PhaseLine below = through(omega -> -1.5 * omega + 0.05 / omega, 1);
    PhaseLine above = through(omega -> -1.5 * omega + 0.05 * Math.pow(omega, 3), 1);
    assertTrue(Math.abs(below.delay() - 1.5) < 2 * below.open(), below.toString());
    assertTrue(Math.abs(above.delay() - 1.5) < 2 * above.open(), above.toString());
    assertTrue(above.open() > 0.05, above.toString());
  }

  /** An all-pass of the first order turns by half a turn, here in the midst of the band. */
  @Test
  void doesNotHoldForPhasesThatTurnInsideTheBand() {
    for (long seed = 0; seed < 20; seed++) {
      PhaseLine line = through(omega -> -2 * Math.atan(omega / 0.2), seed);
      assertFalse(line.holds(), line.toString());
    }
  }
}
