package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OverlapTest {
  /** At equal levels: Haas, after Everest; first null 1/(2t) above 20 kHz: Everest (issuer). */
  @ParameterizedTest
  @CsvSource({
    "0,     SAFE,    no null below 20 kHz",
    "0.024, SAFE,    no null below 20 kHz",
    "0.025, COLOURS, blends to one sound with a comb filter",
    "4.99,  COLOURS, blends to one sound with a comb filter",
    "5,     COLOURS, '5-35 ms blend to one sound, located at the first (Haas'",
    "35,    COLOURS, '5-35 ms blend to one sound, located at the first (Haas'",
    "35.01, COLOURS, 'too late to blend with the first (35 ms), not yet a separate echo (50 ms)'",
    "49.99, COLOURS, 'too late to blend with the first (35 ms), not yet a separate echo (50 ms)'",
    "50,    ECHO,    heard apart from 50-100 ms on",
    "100,   ECHO,    heard apart from 50-100 ms on"
  })
  void delayDecidesAtEqualLevels(double delayMs, Blend effect, String reason) {
    Overlap overlap = new Overlap(delayMs, 0, 0);
    assertEquals(effect, overlap.effect());
    assertTrue(overlap.reason().startsWith(reason), overlap.reason());
  }

  /** Haas, after Everest (issuer): under precedence a copy 10 dB louder is heard as an echo. */
  @ParameterizedTest
  @CsvSource({
    "4.9, 12, COLOURS",
    "5, 9.9, COLOURS",
    "5, 10, ECHO",
    "35, 10, ECHO",
    "40, 10, ECHO",
    "20, -10, COLOURS"
  })
  void muchLouderCopyBreaksPrecedence(double delayMs, double laterLevelDb, Blend effect) {
    assertEquals(effect, new Overlap(delayMs, 0, laterLevelDb).effect());
  }

  /**
   * Brunner, Maempel and Weinzierl 2007 (reported): heard down to 13 dB (piano), 22 dB (speech).
   */
  @ParameterizedTest
  @CsvSource({"-13, COLOURS", "-22, COLOURS", "-22.1, SAFE"})
  void onlyACopyBeyondTheMostSensitiveTestIsSafe(double laterLevelDb, Blend effect) {
    assertEquals(effect, new Overlap(1, 0, laterLevelDb).effect());
  }

  @Test
  void quietCopyThatIsFarApartStillCountsAsAnEcho() {
    assertEquals(Blend.ECHO, new Overlap(60, 0, -30).effect());
  }

  @Test
  void toleranceCountsAsTheWorse() {
    assertEquals(Blend.COLOURS, new Overlap(0, 0.03, 0).effect());
    assertEquals(Blend.ECHO, new Overlap(49, 1, 0).effect());
  }

  @Test
  void whatCannotBeIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Overlap(-1, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> new Overlap(1, -1, 0));
    assertThrows(IllegalArgumentException.class, () -> new Overlap(1, 0, Double.NaN));
  }
}
