package dev.loopgauge.signal.filter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Source: R. Bristow-Johnson, "Audio EQ Cookbook", its digital coefficients (from memory). */
final class EqualiserTest {
  @ParameterizedTest
  @CsvSource({"200, -6", "200, 12", "4000, 9"})
  void aLowShelfHasTheCookbooksCoefficients(double hertz, double db) {
    double a = Math.pow(10, db / 40);
    double cos = Math.cos(2 * Math.PI * hertz / 48_000);
    double twice = Math.sqrt(2 * a) * Math.sin(2 * Math.PI * hertz / 48_000);
    double a0 = a + 1 + (a - 1) * cos + twice;
    Biquad expected =
        new Biquad(
            a * (a + 1 - (a - 1) * cos + twice) / a0,
            2 * a * (a - 1 - (a + 1) * cos) / a0,
            a * (a + 1 - (a - 1) * cos - twice) / a0,
            -2 * (a - 1 + (a + 1) * cos) / a0,
            (a + 1 + (a - 1) * cos - twice) / a0);
    assertNear(expected, new Shelf(Shelf.Side.LOW, hertz, db));
  }

  @ParameterizedTest
  @CsvSource({"200, -6", "4000, 12", "8000, 9"})
  void aHighShelfHasTheCookbooksCoefficients(double hertz, double db) {
    double a = Math.pow(10, db / 40);
    double cos = Math.cos(2 * Math.PI * hertz / 48_000);
    double twice = Math.sqrt(2 * a) * Math.sin(2 * Math.PI * hertz / 48_000);
    double a0 = a + 1 - (a - 1) * cos + twice;
    Biquad expected =
        new Biquad(
            a * (a + 1 + (a - 1) * cos + twice) / a0,
            -2 * a * (a - 1 + (a + 1) * cos) / a0,
            a * (a + 1 + (a - 1) * cos - twice) / a0,
            2 * (a - 1 - (a + 1) * cos) / a0,
            (a + 1 - (a - 1) * cos - twice) / a0);
    assertNear(expected, new Shelf(Shelf.Side.HIGH, hertz, db));
  }

  @ParameterizedTest
  @CsvSource({"1000, 6, 2", "3000, -12, 0.7", "60, 3, 10"})
  void aPeakHasTheCookbooksCoefficients(double hertz, double db, double q) {
    double a = Math.pow(10, db / 40);
    double cos = Math.cos(2 * Math.PI * hertz / 48_000);
    double alpha = Math.sin(2 * Math.PI * hertz / 48_000) / (2 * q);
    double a0 = 1 + alpha / a;
    Biquad expected =
        new Biquad(
            (1 + alpha * a) / a0,
            -2 * cos / a0,
            (1 - alpha * a) / a0,
            -2 * cos / a0,
            (1 - alpha / a) / a0);
    assertNear(expected, new Peak(hertz, db, q));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-12, -3, 6, 18})
  void aShelfIsHalfWayAtItsCornerAndFlatBeyond(double db) {
    Shelf low = new Shelf(Shelf.Side.LOW, 500, db);
    Shelf high = new Shelf(Shelf.Side.HIGH, 500, db);
    assertEquals(db, Designs.levelDb(low, 0.1), 1e-6);
    assertEquals(db / 2, Designs.levelDb(low, 500), 1e-8);
    assertEquals(0, Designs.levelDb(low, 23_999.9), 1e-6);
    assertEquals(0, Designs.levelDb(high, 0.1), 1e-6);
    assertEquals(db / 2, Designs.levelDb(high, 500), 1e-8);
    assertEquals(db, Designs.levelDb(high, 23_999.9), 1e-6);
  }

  @Test
  void aPeakIsHighestInTheMiddleAndNothingFarAway() {
    Peak peak = new Peak(1000, 6, 2);
    assertEquals(6, Designs.levelDb(peak, 1000), 1e-9);
    assertEquals(0, Designs.levelDb(peak, 0.1), 1e-6);
    assertEquals(0, Designs.levelDb(peak, 23_999.9), 1e-6);
  }

  @Test
  void aCutUndoesABoost() {
    Complex both =
        Designs.response(new Peak(1000, 6, 2), 700)
            .times(Designs.response(new Peak(1000, -6, 2), 700));
    assertEquals(0, both.minus(Complex.ONE).magnitude(), 1e-12);
  }

  @Test
  void figuresHaveARange() {
    String refused =
        assertThrows(IllegalArgumentException.class, () -> new Peak(1000, 6, 0)).getMessage();
    assertEquals("the quality must be 0.1 to 100 (middle over bandwidth), not 0", refused);
    assertThrows(IllegalArgumentException.class, () -> new Shelf(Shelf.Side.LOW, 200, Double.NaN));
  }

  private static void assertNear(Biquad expected, Design design) {
    Biquad actual = assertInstanceOf(Biquad.class, design.at(Designs.RATE));
    assertEquals(expected.b0(), actual.b0(), 1e-12);
    assertEquals(expected.b1(), actual.b1(), 1e-12);
    assertEquals(expected.b2(), actual.b2(), 1e-12);
    assertEquals(expected.a1(), actual.a1(), 1e-12);
    assertEquals(expected.a2(), actual.a2(), 1e-12);
  }
}
