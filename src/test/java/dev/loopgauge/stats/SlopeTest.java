package dev.loopgauge.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines and slopes against Apache Commons Math, and the test of a slope at its limits. */
class SlopeTest {
  private static final double[] NO_NOISE = new double[20];

  private static double[] random(long seed, int count) {
    return new SplittableRandom(seed).doubles(count, -5, 5).toArray();
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4, 20})
  void isThatOfAnotherLibrary(int count) {
    double[] x = random(count, count);
    double[] y = random(count + 1, count);
    SimpleRegression other = new SimpleRegression();
    for (int i = 0; i < count; i++) {
      other.addData(x[i], y[i]);
    }
    StraightLine line = StraightLine.even(x, y, Arrays.copyOf(NO_NOISE, count));
    Slope slope = Slope.of(line);
    assertEquals(other.getSlope(), slope.value(), 1e-12);
    assertEquals(other.getIntercept(), line.at(0), 1e-12);
    assertEquals(other.getSlopeStdErr(), slope.fromScatter(), 1e-12);
    assertEquals(Math.sqrt(other.getMeanSquareError()), line.scatter(), 1e-12);
    assertEquals(count - 2, slope.degrees());
    double chance = other.getSignificance();
    assertTrue(slope.isThere(1.01 * chance));
    assertFalse(slope.isThere(0.99 * chance));
  }

  /** A weight of two is as two points at one place. */
  @Test
  void weightsCountLikeRepeatedPoints() {
    StraightLine weighted =
        StraightLine.weighted(
            new double[] {0, 1, 2}, new double[] {1, 5, 2}, new double[] {1, 2, 3});
    StraightLine repeated =
        StraightLine.even(
            new double[] {0, 1, 1, 2, 2, 2}, new double[] {1, 5, 5, 2, 2, 2}, new double[6]);
    assertEquals(repeated.slope(), weighted.slope(), 1e-12);
    assertEquals(repeated.at(3), weighted.at(3), 1e-12);
    assertEquals(repeated.spread(), weighted.spread(), 1e-12);
    assertEquals(repeated.squares(), weighted.squares(), 1e-12);
    assertEquals(3, weighted.count());
  }

  /** An offset for each line: the same as a regression with a column that marks the second. */
  @Test
  void linesWithOffsetsOfTheirOwnShareOneSlope() {
    double[] x = random(7, 9);
    double[] y = random(8, 9);
    double[][] columns = new double[9][];
    for (int i = 0; i < 9; i++) {
      columns[i] = new double[] {x[i], i < 4 ? 0 : 1};
    }
    OLSMultipleLinearRegression other = new OLSMultipleLinearRegression();
    other.newSampleData(y, columns);
    Slope slope =
        Slope.of(
            List.of(
                StraightLine.even(Arrays.copyOf(x, 4), Arrays.copyOf(y, 4), new double[4]),
                StraightLine.even(
                    Arrays.copyOfRange(x, 4, 9), Arrays.copyOfRange(y, 4, 9), new double[5])));
    assertEquals(other.estimateRegressionParameters()[1], slope.value(), 1e-12);
    assertEquals(other.estimateRegressionParametersStandardErrors()[1], slope.fromScatter(), 1e-12);
    assertEquals(6, slope.degrees());
  }

  /** By hand: at 0, 1, 2 the slope is (y2 - y0) / 2. */
  @Test
  void noiseOfEachPointMovesTheSlopeAsFarAsItsPlaceLets() {
    StraightLine line =
        StraightLine.even(new double[] {0, 1, 2}, new double[] {0, 0, 0}, new double[] {3, 9, 4});
    assertEquals(2.5, Slope.of(line).fromNoise(), 1e-12);
    assertEquals(0, Slope.of(line).fromScatter());
  }

  /** At 1 in 1000 the limits are 3.29 standard uncertainties of noise and 636.6 of scatter. */
  @Test
  void aSlopeMustStandAboveNoiseAndScatterAlike() {
    assertTrue(new Slope(3.30, 1, 0, 1).isThere(1e-3));
    assertFalse(new Slope(3.28, 1, 0, 1).isThere(1e-3));
    assertTrue(new Slope(-638, 1, 1, 1).isThere(1e-3));
    assertFalse(new Slope(-635, 1, 1, 1).isThere(1e-3));
    assertTrue(new Slope(3.93, 1, 1, 18).isThere(1e-3));
    assertFalse(new Slope(3.91, 1, 1, 18).isThere(1e-3));
  }

  @Test
  void twoPointsTellNoSlopeFromJitter() {
    Slope slope =
        Slope.of(StraightLine.even(new double[] {0, 1}, new double[] {0, 9}, new double[2]));
    assertEquals(0, slope.degrees());
    assertFalse(slope.isThere(0.5));
  }

  /** Table G.2: 13.97 for one degree of freedom. */
  @Test
  void expandsByStudentOrTwofold() {
    assertEquals(13.97, new Slope(1, 1, 1, 1).expanded(), 0.01);
    assertEquals(20, new Slope(1, 10, 1, 1).expanded(), 1e-12);
    assertEquals(6, new Slope(1, 3, 0, 0).expanded(), 1e-12);
  }

  @Test
  void pointsAtOnePlaceHaveNoSlope() {
    Slope slope =
        Slope.of(StraightLine.even(new double[] {1, 1, 1}, new double[] {1, 2, 3}, new double[3]));
    assertEquals(0, slope.value());
    assertFalse(slope.isThere(0.5));
  }

  @Test
  void refusesWhatIsNoNumber() {
    assertThrows(IllegalArgumentException.class, () -> new Slope(Double.NaN, 0, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> new Slope(1, -1, 0, 1));
    assertThrows(
        IllegalArgumentException.class, () -> new Slope(1, 0, Double.POSITIVE_INFINITY, 1));
    assertThrows(IllegalArgumentException.class, () -> new Slope(1, 0, 0, -1));
    double[] two = new double[2];
    assertThrows(IllegalArgumentException.class, () -> StraightLine.weighted(two, two, two));
    assertThrows(
        IllegalArgumentException.class, () -> StraightLine.weighted(two, two, new double[3]));
  }

  /** A point known a thousand times less well than its neighbours neither tilts nor blurs. */
  @Test
  void aLineByNoiseLeavesOutWhatIsKnownBadly() {
    double[] x = {0, 1, 2, 3, 4, 5};
    double[] y = {0, 2, 4, 6, 90, 10};
    double[] noise = {0.01, 0.01, 0.01, 0.01, 10, 0.01};
    StraightLine line = StraightLine.byNoise(x, y, noise);
    assertEquals(2, line.slope(), 1e-3);
    assertEquals(0.01 / Math.sqrt(14.8), line.slopeNoise(), 1e-6);
  }
}
