package dev.loopgauge.estimate.measurand;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.signal.filter.Complex;
import dev.loopgauge.signal.filter.Crossover;
import dev.loopgauge.signal.filter.Design;
import dev.loopgauge.signal.filter.Designs;
import dev.loopgauge.signal.filter.HighPass;
import dev.loopgauge.signal.filter.LowPass;
import dev.loopgauge.signal.filter.Peak;
import dev.loopgauge.signal.filter.Shelf;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class MinimumPhaseTest {
  private static final double[] OMEGAS =
      IntStream.range(0, 120)
          .mapToDouble(i -> 2 * Math.PI * 20 * Math.pow(2, i / 12.0) / Designs.RATE.hertz())
          .filter(omega -> omega < 0.42 * 2 * Math.PI)
          .toArray();

  /**
   * Filters without more phase than their magnitude needs, whose phases are known in closed form.
   */
  static Stream<Design> filters() {
    return Stream.of(
        new HighPass(100, 2),
        new HighPass(80, 4),
        new LowPass(8000, 2),
        new LowPass(300, 4),
        new Crossover(1200, 4, Crossover.Output.LOW),
        new Crossover(1200, 4, Crossover.Output.HIGH),
        new Shelf(Shelf.Side.LOW, 200, -6),
        new Shelf(Shelf.Side.HIGH, 4000, 9),
        new Peak(1000, 6, 2));
  }

  @ParameterizedTest
  @MethodSource("filters")
  void givesTheFiltersOwnPhase(Design design) {
    Complex[] responses = new Complex[OMEGAS.length];
    double[] magnitudes = new double[OMEGAS.length];
    double[] variances = new double[OMEGAS.length];
    for (int i = 0; i < OMEGAS.length; i++) {
      responses[i] = design.at(Designs.RATE).response(OMEGAS[i] / (2 * Math.PI));
      magnitudes[i] = Math.log(responses[i].magnitude());
    }
    double[] phases = new MinimumPhase(OMEGAS, variances).of(magnitudes);
    for (int i = 0; i < OMEGAS.length; i++) {
      double off = phases[i] - responses[i].phase();
      off -= 2 * Math.PI * Math.rint(off / (2 * Math.PI));
      // Straight pieces of a twelfth of an octave, and a slope that goes on as in the last octave.
      boolean atEdge = i < 24 || i >= OMEGAS.length - 24;
      assertEquals(0, off, atEdge ? 0.35 : 0.06, design + " at " + OMEGAS[i]);
    }
  }

  @Test
  void turnsAQuarterForEachPowerOfTheFrequency() {
    double[] magnitudes = new double[OMEGAS.length];
    for (int i = 0; i < OMEGAS.length; i++) {
      magnitudes[i] = Math.log(Math.tan(OMEGAS[i] / 2));
    }
    double[] phases = new MinimumPhase(OMEGAS, new double[OMEGAS.length]).of(magnitudes);
    for (double phase : phases) {
      assertEquals(Math.PI / 2, phase, 1e-9);
    }
  }

  /**
   * By the midpoint rule in 10^6 steps, which is off by some 1e-6 at the pole; to infinity pi^2 / 4
   * (Bode 1945, from memory).
   */
  @Test
  void integratesItsKernel() {
    for (double x : new double[] {0.01, 0.3, 0.499, 0.501, 2, 6}) {
      double sum = 0;
      int steps = 1_000_000;
      for (int i = 0; i < steps; i++) {
        double u = x * (i + 0.5) / steps;
        sum += Math.log(1 / Math.tanh(u / 2)) * x / steps;
      }
      assertEquals(sum, MinimumPhase.integral(x), 1e-5, "to " + x);
    }
    assertEquals(Math.PI * Math.PI / 4, MinimumPhase.integral(60), 1e-12);
  }
}
