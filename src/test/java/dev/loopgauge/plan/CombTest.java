package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CombTest {
  /** Everest, Master Handbook of Acoustics, chapter 10 (issuer). */
  @Test
  void oneMillisecondNullsAt500HzAndEvery1000Hz() {
    Comb comb = new Comb(1, 0);
    assertEquals(500, comb.firstNullHz().orElseThrow());
    assertEquals(1000, comb.nullSpacingHz().orElseThrow());
  }

  /** Derived from 20 log10((1 + g) / (1 - g)). */
  @ParameterizedTest
  @CsvSource({"1, 24.81", "3, 15.34", "6, 9.57", "10, 5.69", "20, 1.74"})
  void rippleIsAsDeepAsTheLevelsAreClose(double levelDifferenceDb, double rippleDb) {
    assertEquals(rippleDb, new Comb(1, levelDifferenceDb).rippleDb().orElseThrow(), 0.005);
  }

  /** Against the sum itself: |1 + g e^(-i 2 pi f t)| at its peaks and nulls. */
  @ParameterizedTest
  @CsvSource({"0.3, 2", "1, 6", "7.5, 13", "40, 22"})
  void nullsAndRippleAreThoseOfTheSum(double delayMs, double levelDifferenceDb) {
    Comb comb = new Comb(delayMs, levelDifferenceDb);
    double nullHz = comb.firstNullHz().orElseThrow();
    double spacingHz = comb.nullSpacingHz().orElseThrow();
    double dip = sumDb(nullHz, delayMs, levelDifferenceDb);
    assertEquals(dip, sumDb(nullHz + spacingHz, delayMs, levelDifferenceDb), 1e-9);
    double peak = sumDb(nullHz + spacingHz / 2, delayMs, levelDifferenceDb);
    assertEquals(peak - dip, comb.rippleDb().orElseThrow(), 1e-9);
  }

  private static double sumDb(double hertz, double delayMs, double levelDifferenceDb) {
    double g = Math.pow(10, -levelDifferenceDb / 20);
    double angle = 2 * Math.PI * hertz * delayMs / 1000;
    return 20 * Math.log10(Math.hypot(1 + g * Math.cos(angle), g * Math.sin(angle)));
  }

  @Test
  void equalLevelsCancelEntirely() {
    assertEquals(OptionalDouble.empty(), new Comb(1, 0).rippleDb());
  }

  @Test
  void copiesInStepHaveNoNull() {
    assertEquals(OptionalDouble.empty(), new Comb(0, 6).firstNullHz());
    assertEquals(OptionalDouble.empty(), new Comb(0, 6).nullSpacingHz());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, Double.NaN, Double.POSITIVE_INFINITY})
  void whatIsNoDelayOrLevelIsRefused(double wrong) {
    assertThrows(IllegalArgumentException.class, () -> new Comb(wrong, 0));
    assertThrows(IllegalArgumentException.class, () -> new Comb(1, wrong));
  }
}
