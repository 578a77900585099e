package dev.loopgauge.signal.filter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Source: S. H. Linkwitz, J. Audio Eng. Soc. 24(1), 1976 (from memory). */
final class CrossoverTest {
  private static final double HALF_DB = 20 * Math.log10(0.5);

  @ParameterizedTest
  @CsvSource({"80, 2", "80, 4", "1200, 2", "2500, 4"})
  void bothBranchesAreSixDecibelsDownWhereTheyCross(double hertz, int order) {
    assertEquals(HALF_DB, level(hertz, order, Crossover.Output.LOW, hertz), 1e-8);
    assertEquals(HALF_DB, level(hertz, order, Crossover.Output.HIGH, hertz), 1e-8);
  }

  @ParameterizedTest
  @CsvSource({"80, 2", "80, 4", "1200, 2", "2500, 4"})
  void theSumIsAsLoudEverywhere(double hertz, int order) {
    for (double at : new double[] {20, hertz / 2, hertz, hertz * 2, 20_000}) {
      assertEquals(0, level(hertz, order, Crossover.Output.SUM, at), 1e-8);
    }
  }

  /** Order 4: all-pass of second order; order 2: of first order. */
  @ParameterizedTest
  @ValueSource(ints = {2, 4})
  void theSumIsAnAllPassOfHalfTheOrder(int order) {
    for (double at : new double[] {100, 500, 1200, 5000, 15_000}) {
      Complex sum = Designs.response(new Crossover(1200, order, Crossover.Output.SUM), at);
      Complex allPass = Designs.response(new AllPass(1200, order / 2), at);
      assertEquals(0, sum.minus(allPass).magnitude(), 1e-9);
    }
  }

  /** Of the fourth order, low, high and sum are in phase at all frequencies. */
  @Test
  void theBranchesOfFourthOrderHaveTheSumsGroupDelay() {
    for (double at : new double[] {40, 80, 160, 1000}) {
      double sum = delay(Crossover.Output.SUM, at);
      assertEquals(sum, delay(Crossover.Output.LOW, at), 1e-5);
      assertEquals(sum, delay(Crossover.Output.HIGH, at), 1e-5);
    }
  }

  @Test
  void aCrossoverHasAnEvenOrder() {
    String refused =
        assertThrows(
                IllegalArgumentException.class, () -> new Crossover(80, 3, Crossover.Output.LOW))
            .getMessage();
    assertEquals("a crossover's order must be 2 or 4, not 3", refused);
  }

  private static double level(double hertz, int order, Crossover.Output output, double at) {
    return Designs.levelDb(new Crossover(hertz, order, output), at);
  }

  private static double delay(Crossover.Output output, double at) {
    return Designs.groupDelay(new Crossover(80, 4, output), at);
  }
}
