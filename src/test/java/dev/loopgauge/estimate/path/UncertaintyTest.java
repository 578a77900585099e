package dev.loopgauge.estimate.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UncertaintyTest {
  /** Published: JCGM 100:2008 (GUM), table G.2, column 95.45 %, from memory. */
  @ParameterizedTest
  @CsvSource({"3, 3.31", "4, 2.87", "5, 2.65", "8, 2.37", "10, 2.28", "20, 2.13", "50, 2.05"})
  void widensAsStudentsDistributionAsks(int degrees, double k) {
    double exact =
        new TDistribution(degrees)
            .inverseCumulativeProbability(new NormalDistribution().cumulativeProbability(2));
    assertEquals(k, exact, 0.006, "the table as remembered");
    assertEquals(exact, 2 * Uncertainty.widening(degrees), 0.01 * exact);
  }

  @ParameterizedTest
  @CsvSource({"1e9, 1e-8", "Infinity, 0"})
  void widensNothingThatIsKnownWell(double degrees, double within) {
    assertEquals(1, Uncertainty.widening(degrees), within);
  }

  /** Chi-square at 0.01 %, published, from memory: 15.14, 18.42, 21.11 and 33.72 for n - 1. */
  @ParameterizedTest
  @CsvSource({"2, 15.14", "3, 18.42", "4, 21.11", "10, 33.72"})
  void theScatterOfReadingsCountsOnlyBeyondWhatNoiseGives(int count, double chiSquare) {
    double noise = 0.3;
    double apart = Math.sqrt(chiSquare / spread(count)) * noise;
    assertEquals(
        noise / Math.sqrt(count), Uncertainty.ofMean(spaced(count, 0.99 * apart), noise), 1e-12);
    double own = Uncertainty.ofMean(spaced(count, 1.01 * apart), noise);
    assertTrue(own > 2 * noise / Math.sqrt(count), () -> own + " for " + count);
  }

  /** Half of table G.2's k for n - 1 degrees of freedom: 13.97, 4.53, 3.31, 2.87. */
  @ParameterizedTest
  @CsvSource({"2, 13.97", "3, 4.53", "4, 3.31", "5, 2.87"})
  void theScatterOfFewReadingsIsWidenedByStudent(int count, double k) {
    double[] delays = spaced(count, 1);
    double deviation = Math.sqrt(spread(count) / (count - 1));
    double expected = k / 2 * deviation / Math.sqrt(count);
    assertEquals(expected, Uncertainty.ofMean(delays, 1e-6), 0.002 * expected);
  }

  @ParameterizedTest
  @CsvSource({"2.9", "3", "0"})
  void fewerDegreesThanThreeCountAsThree(double degrees) {
    assertEquals(Uncertainty.widening(3), Uncertainty.widening(degrees));
    assertTrue(Uncertainty.widening(3.1) < Uncertainty.widening(3));
  }

  private static double[] spaced(int count, double apart) {
    return IntStream.range(0, count).mapToDouble(i -> 100 + i * apart).toArray();
  }

  /** The sum of squares of equally spaced values, one apart, about their mean. */
  private static double spread(int count) {
    return count * (count * count - 1) / 12.0;
  }
}
