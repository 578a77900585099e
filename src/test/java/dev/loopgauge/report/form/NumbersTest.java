package dev.loopgauge.report.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumbersTest {
  @ParameterizedTest
  @CsvSource({
    "595, 4, 595",
    "723.0200001, 4, 723.02",
    "0.1, 4, 0.1",
    "-0.00001, 4, 0",
    "1200, 2, 1200",
    "1e-7, 9, 0.0000001",
    "123456789, 1, 123456789",
  })
  void jsonNumbersArePlainAndRounded(double value, int decimals, String expected) {
    assertEquals(expected, Numbers.rounded(value, decimals).toPlainString());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void whatIsNoNumberIsNeverWritten(double value) {
    assertThrows(NumberFormatException.class, () -> Numbers.rounded(value, 3));
    assertThrows(NumberFormatException.class, () -> Numbers.plain(value, 3));
  }

  @ParameterizedTest
  @CsvSource({
    "0.04, 3, 0.040",
    "0.036, 3, 0.036",
    "0.012, 3, 0.012",
    "0.0125, 3, 0.013",
    "0.3, 2, 0.30",
    "3.2, 1, 3.2",
    "1.2, 1, 1.2",
    "12.3, 0, 13",
    "250, 0, 250",
    "0.00002, 3, 0.001",
  })
  void givesNoDigitBeyondTheUncertainty(double uncertainty, int decimals, String written) {
    assertEquals(decimals, Numbers.decimalsFor(uncertainty, 3));
    assertEquals(written, Numbers.plainUp(uncertainty, decimals));
  }

  /** Ties among them, which binary fractions only nearly are. */
  @Test
  void roundsAsTheShortestDecimalOfADoubleDoes() {
    SplittableRandom random = new SplittableRandom(1);
    for (int trial = 0; trial < 200_000; trial++) {
      int decimals = random.nextInt(7);
      double half = random.nextInt(-4000, 4000) / Math.pow(10, decimals) / 2;
      double value = trial % 2 == 0 ? half : random.nextGaussian() * Math.pow(10, trial % 9 - 3);
      BigDecimal expected = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
      assertEquals(
          0, expected.compareTo(Numbers.rounded(value, decimals)), value + ", " + decimals);
    }
  }

  @Test
  void anUncertaintyNeverReadsZero() {
    assertEquals("0.0001", Numbers.roundedUp(1e-9, 4).toPlainString());
  }

  @Test
  void briefNumbersDropZeros() {
    assertEquals("595", Numbers.brief(595.04, 1));
    assertEquals("595.5", Numbers.brief(595.5, 1));
  }
}
