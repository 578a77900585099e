package dev.loopgauge.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecibelsTest {
  @ParameterizedTest
  @CsvSource({"0, 1", "-20, 0.1", "20, 10", "-6.0206, 0.5"})
  void turnsLevelsIntoFactorsAndBack(double db, double factor) {
    assertEquals(factor, Decibels.toFactor(db), 1e-6);
    assertEquals(db, Decibels.ofFactor(factor), 1e-4);
    assertEquals(db, Decibels.ofFactor(-factor), 1e-4);
    assertEquals(db, Decibels.ofPower(factor * factor), 1e-4);
  }

  @Test
  void callsSilenceInfinitelyQuiet() {
    assertEquals(Double.NEGATIVE_INFINITY, Decibels.ofFactor(0));
    assertEquals(Double.NEGATIVE_INFINITY, Decibels.ofPower(0));
    assertEquals(0, Decibels.toFactor(Double.NEGATIVE_INFINITY));
  }
}
