package dev.loopgauge.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against published tables, from memory, and against Apache Commons Math. */
class QuantilesTest {
  /** Published: JCGM 100:2008 (GUM), table G.2, column 95.45 %, from memory. */
  @ParameterizedTest
  @CsvSource({"1, 13.97", "2, 4.53", "3, 3.31", "4, 2.87", "10, 2.28", "50, 2.05"})
  void studentWithinIsThatOfTheGuidesTable(int degrees, double published) {
    assertEquals(published, Quantiles.studentWithin(Quantiles.TWO_SIGMA, degrees), 0.006);
  }

  /** Student's t of 1 degree of freedom is Cauchy's: beyond t on either side 1 - 2 atan(t) / pi. */
  @ParameterizedTest
  @CsvSource({"0.5", "4", "636.6", "-4"})
  void studentBeyondIsCauchysForOneDegree(double t) {
    double exact = 2 / Math.PI * Math.atan(1 / Math.abs(t));
    assertEquals(exact, Quantiles.studentBeyond(t, 1), 1e-9 * exact + 1e-15);
  }

  @ParameterizedTest
  @CsvSource({"3, 2", "5.96, 6", "6, 14", "3.9, 18"})
  void studentBeyondIsAsAnotherLibraryHasIt(double t, int degrees) {
    double other =
        2
            * new org.apache.commons.math3.distribution.TDistribution(degrees)
                .cumulativeProbability(-t);
    assertEquals(other, Quantiles.studentBeyond(t, degrees), 1e-9);
  }

  /** Beyond 6 on 14 degrees of freedom: what the drift within one reading is called by. */
  @ParameterizedTest
  @CsvSource({"6, 14, 31000"})
  void oneReadingsDriftIsAFalseAlarmOnceInSoMany(double t, int degrees, double times) {
    assertEquals(times, 1 / Quantiles.studentBeyond(t, degrees), 0.03 * times);
  }

  @ParameterizedTest
  @CsvSource({"1.959964, 0.05", "3.290527, 0.001", "-3.290527, 0.001", "0, 1"})
  void normalBeyondIsThatOfTheTables(double z, double chance) {
    assertEquals(chance, Quantiles.normalBeyond(z), 1e-6);
  }

  /** Published: chi-square at 0.1 %, as in any table, from memory. */
  @ParameterizedTest
  @CsvSource({"1, 10.828", "2, 13.816", "3, 16.266", "4, 18.467", "10, 29.588"})
  void chiSquareIsThatOfTheTables(int degrees, double published) {
    assertEquals(published, Quantiles.chiSquareBeyond(0.001, degrees), 0.001);
  }
}
