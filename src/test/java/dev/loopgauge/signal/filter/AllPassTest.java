package dev.loopgauge.signal.filter;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class AllPassTest {
  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void theLevelStays(int order) {
    for (double hertz : new double[] {20, 500, 1000, 3000, 20_000}) {
      assertEquals(0, Designs.levelDb(new AllPass(1000, order), hertz), 1e-9);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void thePhaseTurnsByNinetyDegreesAtTheCornerForEachOrder(int order) {
    double expected = -order * Math.PI / 2;
    double phase = Designs.response(new AllPass(1000, order), 1000).phase();
    assertEquals(0, Math.sin((phase - expected) / 2), 1e-9);
  }

  /** Expected: 2 / w0 in the first order, 2 sqrt(2) / w0 in the second (derived). */
  @Test
  void theBassComesByItsTurnOverTheCornerLate() {
    double corner = 2 * Math.tan(Math.PI * 80 / 48_000);
    assertEquals(2 / corner, Designs.groupDelay(new AllPass(80, 1), 0.01), 1e-4);
    assertEquals(2 * Math.sqrt(2) / corner, Designs.groupDelay(new AllPass(80, 2), 0.01), 1e-4);
  }

  /**
   * Expected: 2 / w0 (atan(sqrt(2) x + 1) + atan(sqrt(2) x - 1)) from x = 1 / sqrt(2) to sqrt(2),
   * over the octave's width (derived): 250.5 samples at 80 Hz and 48 kHz.
   */
  @Test
  void theOctaveAroundTheCornerOfACrossoverIsLateByTheClosedFormsMean() {
    double width = Math.sqrt(2) - 1 / Math.sqrt(2);
    double turn = Math.atan(3) + Math.atan(1) - Math.atan(2);
    double expected = 2 * turn / width / (2 * Math.PI * 80) * 48_000;
    double mean = mean(new Crossover(80, 4, Crossover.Output.LOW), 80);
    assertEquals(250.46, expected, 0.01);
    assertEquals(expected, mean, 0.01);
  }

  private static double mean(Design design, double hertz) {
    int steps = 20_000;
    double low = hertz / Math.sqrt(2);
    double sum = 0;
    for (int i = 0; i < steps; i++) {
      sum += Designs.groupDelay(design, low + low * (i + 0.5) / steps);
    }
    return sum / steps;
  }
}
