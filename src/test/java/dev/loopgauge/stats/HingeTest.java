package dev.loopgauge.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class HingeTest {
  private static final int SLOPING = 4;
  private static final double NOISE = 0.01;
  private static final double SLOPE = 0.02;

  /** Eight values with a pause in their middle. */
  private static final double[] PAUSED = {0, 2, 4, 30, 32, 34, 36, 38};

  private static double[] values(double[] x, double from, double noise, SplittableRandom random) {
    return Arrays.stream(x)
        .map(t -> 5 + SLOPE * Math.max(0, t - from) + noise * random.nextGaussian())
        .toArray();
  }

  private static Hinge hinge(double from, double noise, SplittableRandom random) {
    double[] noises = new double[PAUSED.length];
    Arrays.fill(noises, NOISE);
    return Hinge.of(PAUSED, values(PAUSED, from, noise, random), noises, SLOPING);
  }

  @Test
  void findsWhereValuesLeaveTheirLevel() {
    for (double from : new double[] {0, 2, 4, 17, 30}) {
      Hinge hinge = hinge(from, 0, new SplittableRandom(1));
      assertEquals(from, hinge.at(), 1e-9);
      assertEquals(SLOPE, hinge.slope().value(), 1e-9);
      assertTrue(hinge.slope().expanded() > 0, hinge::toString);
    }
  }

  /** With k = 2: 95.45 % within once the uncertainty, all but 1 in 16,000 within twice. */
  @Test
  void coversWhatAPauseLeavesOpen() {
    SplittableRandom random = new SplittableRandom(2);
    int trials = 4000;
    int beyond = 0;
    int farBeyond = 0;
    int ofOneLine = 0;
    for (int i = 0; i < trials; i++) {
      double from = 30 * random.nextDouble();
      double[] y = values(PAUSED, from, NOISE, random);
      double[] noises = new double[PAUSED.length];
      Arrays.fill(noises, NOISE);
      Slope slope = Hinge.of(PAUSED, y, noises, SLOPING).slope();
      double off = Math.abs(slope.value() - SLOPE) / slope.expanded();
      beyond += off > 1 ? 1 : 0;
      farBeyond += off > 2 ? 1 : 0;
      Slope straight = Slope.of(StraightLine.byNoise(PAUSED, y, noises));
      ofOneLine += Math.abs(straight.value() - SLOPE) > straight.expanded() ? 1 : 0;
    }
    assertTrue(beyond < 0.05 * trials, beyond + " beyond");
    assertTrue(farBeyond <= 2, farBeyond + " far beyond");
    assertTrue(ofOneLine > trials / 2, ofOneLine + " of one line through all");
  }

  /** Where nothing pauses the moment costs little. */
  @Test
  void isHardlyWiderThanALineWhereAllSlopes() {
    double[] x = new double[32];
    double[] noises = new double[x.length];
    Arrays.setAll(x, i -> 2 * i);
    Arrays.fill(noises, NOISE);
    double[] y = values(x, 0, NOISE, new SplittableRandom(3));
    double line = Slope.of(StraightLine.byNoise(x, y, noises)).expanded();
    double hinge = Hinge.of(x, y, noises, SLOPING).slope().expanded();
    assertTrue(hinge >= 0.9 * line && hinge < 2 * line, line + " " + hinge);
  }
}
