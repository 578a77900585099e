package dev.loopgauge.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.correlation.KendallsCorrelation;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TrendTest {
  private static double[] noise(SplittableRandom random, int count, double slope) {
    return IntStream.range(0, count).mapToDouble(i -> slope * i + random.nextGaussian()).toArray();
  }

  private static double[] times(int count) {
    return IntStream.range(0, count).mapToDouble(i -> i).toArray();
  }

  /** Tau-b without ties is S over the number of pairs; Apache Commons Math has it by itself. */
  @ParameterizedTest
  @ValueSource(longs = {1, 22, 333})
  void agreesWithApacheCommonsMath(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] values = noise(random, 41, 0.05);
    Trend trend = Trend.of(times(41), values);
    double tau = new KendallsCorrelation().correlation(times(41), values);
    assertEquals(tau, trend.s() / (41 * 40 / 2.0), 1e-12, "seed " + seed);
    List<Double> slopes = new ArrayList<>();
    for (int i = 0; i < 41; i++) {
      for (int j = i + 1; j < 41; j++) {
        slopes.add((values[j] - values[i]) / (j - i));
      }
    }
    double[] all = slopes.stream().mapToDouble(s -> s).toArray();
    assertEquals(new Median().evaluate(all), trend.slope(), 1e-12, "seed " + seed);
    double p = 2 * (1 - new NormalDistribution().cumulativeProbability(Math.abs(trend.z())));
    assertEquals(p < 0.05, trend.isThere(), "seed " + seed + ", p " + p);
  }

  /** By hand: 6 pairs, 5 rise, 1 ties; variance (4*3*13 - 2*1*9) / 18 = 7.667. */
  @Test
  void tiesTakeFromTheVariance() {
    Trend trend = Trend.of(times(4), new double[] {1, 2, 2, 3});
    assertEquals(5, trend.s());
    assertEquals(4 / Math.sqrt(138 / 18.0), trend.z(), 1e-12);
    assertEquals(0, Trend.of(times(4), new double[] {7, 7, 7, 7}).z());
  }

  @Test
  void trendsAreSeenInNoMoreThanOneOfTwentyWithoutOne() {
    long seed = 777;
    SplittableRandom random = new SplittableRandom(seed);
    int seen = 0;
    int covered = 0;
    for (int i = 0; i < 2000; i++) {
      Trend trend = Trend.of(times(20), noise(random, 20, 0.1));
      covered += trend.low() <= 0.1 && 0.1 <= trend.high() ? 1 : 0;
      seen += Trend.of(times(20), noise(random, 20, 0)).isThere() ? 1 : 0;
    }
    assertTrue(seen > 50 && seen < 130, seen + " of 2000, seed " + seed);
    assertTrue(covered > 1860 && covered < 1960, covered + " of 2000, seed " + seed);
  }

  /** A quarter of wild readings moves least squares, and not this. */
  @Test
  void wildReadingsDoNotMoveIt() {
    long seed = 4;
    SplittableRandom random = new SplittableRandom(seed);
    double[] values = noise(random, 60, 0.5);
    SimpleRegression squares = new SimpleRegression();
    for (int i = 45; i < 60; i++) {
      values[i] = -500;
    }
    for (int i = 0; i < 60; i++) {
      squares.addData(i, values[i]);
    }
    assertTrue(squares.getSlope() < -5, "" + squares.getSlope());
    assertTrue(Trend.of(times(60), values).slope() > 0, "seed " + seed);
  }

  @Test
  void manyReadingsAreTakenTogetherAndGiveTheSameSlope() {
    long seed = 5;
    SplittableRandom random = new SplittableRandom(seed);
    Trend trend = Trend.of(times(20_000), noise(random, 20_000, 0.001));
    assertEquals(0.001, trend.slope(), 5e-6, "seed " + seed);
    assertTrue(trend.isThere());
    assertFalse(Trend.of(times(20), new double[20]).isThere());
  }
}
