package dev.loopgauge.stats;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class MedianTest {
  @Test
  void isTheMiddleValueOrHalfwayBetweenTheTwoMiddleOnes() {
    assertEquals(3, Median.of(9, 3, -100));
    assertEquals(2.5, Median.of(3, 9, -100, 2));
    assertEquals(7, Median.of(new double[] {1, 7, 8, 6, 1}, 1, 4));
  }

  @Test
  void leavesTheValuesAsTheyAre() {
    double[] values = {3, 1, 2};
    assertEquals(2, Median.of(values));
    assertArrayEquals(new double[] {3, 1, 2}, values);
  }

  @Test
  void refusesNoValues() {
    assertThrows(IllegalArgumentException.class, Median::of);
  }

  @Test
  void magnitudeOfManyIsThatOfAllToAPercent() {
    SplittableRandom random = new SplittableRandom(1);
    double[] values = random.doubles(100_000, -1, 1).toArray();
    assertEquals(0.5, Median.magnitude(values), 0.02);
    assertEquals(2, Median.magnitude(new double[] {-3, 1, -2}));
  }

  @Test
  void scatterOfNormalValuesIsTheirStandardDeviation() {
    SplittableRandom random = new SplittableRandom(2);
    double[] values = new double[20_001];
    for (int i = 0; i < values.length; i++) {
      values[i] = 5 + 3 * random.nextGaussian();
    }
    assertEquals(3, RobustScatter.aboutMedian(values), 0.1);
    assertEquals(3, RobustScatter.fromMoves(values), 0.1);
    for (int i = 0; i < 2000; i++) {
      values[i] = 1e6;
    }
    assertEquals(3, RobustScatter.aboutMedian(values), 0.6);
    assertEquals(3, RobustScatter.fromMoves(values), 0.6);
  }
}
