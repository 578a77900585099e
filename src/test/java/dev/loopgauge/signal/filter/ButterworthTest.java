package dev.loopgauge.signal.filter;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.signal.SampleRate;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class ButterworthTest {
  private static final double HALF_POWER_DB = 10 * Math.log10(0.5);

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void theCornerIsThreeDecibelsDown(int order) {
    assertEquals(HALF_POWER_DB, Designs.levelDb(new LowPass(5000, order), 5000), 1e-9);
    assertEquals(HALF_POWER_DB, Designs.levelDb(new HighPass(80, order), 80), 1e-8);
  }

  /** Expected: |H|^2 = 1 / (1 + x^2n), x the ratio of the tangents (Butterworth 1930). */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void theMagnitudeFollowsTheClosedForm(int order) {
    for (double hertz : new double[] {100, 1000, 2500, 6000, 12_000, 20_000}) {
      double x = Math.tan(Math.PI * hertz / 48_000) / Math.tan(Math.PI * 2000 / 48_000);
      double low = -10 * Math.log10(1 + Math.pow(x, 2 * order));
      double high = -10 * Math.log10(1 + Math.pow(x, -2 * order));
      assertEquals(low, Designs.levelDb(new LowPass(2000, order), hertz), 1e-8);
      assertEquals(high, Designs.levelDb(new HighPass(2000, order), hertz), 1e-8);
    }
  }

  /**
   * Expected: the sum over m from 0 to n - 1 of x^2m / sin((2m + 1) pi / 2n), over 1 + x^2n, for a
   * corner at 1 radian a second (tables of Butterworth filters, from memory); the bilinear
   * transform stretches it by dx/dw = (1 + tan^2) / 2k.
   */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void theGroupDelayFollowsTheClosedForm(int order) {
    for (double corner : new double[] {30, 300, 2000}) {
      for (double hertz : new double[] {35, 100, 1000, 2500, 12_000, 20_000}) {
        double expected = groupDelay(order, corner, hertz);
        double delta = 1e-9 * expected + 1e-10;
        assertEquals(expected, Designs.groupDelay(new LowPass(corner, order), hertz), delta);
        assertEquals(expected, Designs.groupDelay(new HighPass(corner, order), hertz), delta);
      }
    }
  }

  private static double groupDelay(int order, double corner, double hertz) {
    double k = Math.tan(Math.PI * corner / 48_000);
    double tangent = Math.tan(Math.PI * hertz / 48_000);
    double x = tangent / k;
    double sum = 0;
    for (int m = 0; m < order; m++) {
      sum += Math.pow(x, 2 * m) / Math.sin((2 * m + 1) * Math.PI / (2 * order));
    }
    return sum / (1 + Math.pow(x, 2 * order)) * (1 + tangent * tangent) / (2 * k);
  }

  @Test
  void aBandIsThreeDecibelsDownAtItsEdges() {
    assertEquals(HALF_POWER_DB, Designs.levelDb(BandPass.TELEPHONE, 300), 1e-3);
    assertEquals(HALF_POWER_DB, Designs.levelDb(BandPass.TELEPHONE, 3400), 1e-3);
    assertEquals(0, Designs.levelDb(BandPass.TELEPHONE, 1000), 0.01);
    assertEquals(HALF_POWER_DB, Designs.levelDb(BandPass.SUBWOOFER, 30), 0.01);
    assertEquals(HALF_POWER_DB, Designs.levelDb(BandPass.SUBWOOFER, 90), 0.01);
  }

  @Test
  void theCornerLiesBelowHalfTheRate() {
    assertEquals(
        "a corner at 4000.0 Hz lies at or above half the sample rate, 4000.0 Hz",
        refused(() -> new LowPass(4000, 2).at(new SampleRate(8_000))));
    assertDoesNotThrow(() -> new LowPass(3999, 2).at(new SampleRate(8_000)));
  }

  @Test
  void ordersAndCornersHaveARange() {
    assertEquals(
        "the order must be 1 to 4 (6 dB an octave each), not 5",
        refused(() -> new HighPass(80, 5)));
    assertEquals("the corner must be 1 to 384000 Hz, not 0", refused(() -> new LowPass(0, 1)));
    assertEquals(
        "the upper corner must be 300 to 384000 Hz, not 200",
        refused(() -> new BandPass(300, 200)));
  }

  private static String refused(Supplier<?> made) {
    return assertThrows(IllegalArgumentException.class, made::get).getMessage();
  }
}
