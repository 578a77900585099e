package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

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
}
