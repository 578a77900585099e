package dev.loopgauge.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class MeanShiftTest {
  private static final double[] NO_NOISE = {0, 0, 0, 0, 0, 0};

  private static double[] around(double level, double scatter, SplittableRandom random) {
    return random.doubles(6).map(u -> level + scatter * random.nextGaussian()).toArray();
  }

  @Test
  void tellsSizeAndDegreesByHand() {
    MeanShift shift =
        MeanShift.of(
            new double[] {1, 3, 1},
            new double[] {6, 4},
            new double[] {1, 1, 1},
            new double[] {2, 2});
    assertEquals(5 - 5.0 / 3, shift.value(), 1e-12);
    assertEquals(Math.hypot(1 / Math.sqrt(3), 2 / Math.sqrt(2)), shift.fromNoise(), 1e-12);
    // Three differences of 2: a variance of 12 / (2 * 3).
    assertEquals(Math.sqrt(2 * (1.0 / 3 + 1.0 / 2)), shift.fromScatter(), 1e-12);
    assertEquals(18.0 / 8, shift.degrees(), 1e-12);
  }

  @Test
  void takesScatterFromMoreValuesThanItCompares() {
    double[] one = {1};
    MeanShift shift = MeanShift.of(one, new double[] {5}, one, one, new double[] {1, 3, 1});
    assertEquals(4, shift.value(), 1e-12);
    // Two differences of 2: a variance of 8 / (2 * 2), of two single values.
    assertEquals(Math.sqrt(2 * 2), shift.fromScatter(), 1e-12);
    assertEquals(8.0 / 5, shift.degrees(), 1e-12);
    assertEquals(
        new MeanShift(1, shift.fromNoise(), shift.fromScatter(), shift.degrees()), shift.with(1));
  }

  @Test
  void keepsItsChanceOfFalseAlarms() {
    SplittableRandom random = new SplittableRandom(11);
    int trials = 20_000;
    int alarms = 0;
    for (int i = 0; i < trials; i++) {
      MeanShift shift =
          MeanShift.of(around(0, 1, random), around(0, 1, random), NO_NOISE, NO_NOISE);
      alarms += shift.isThere(0.01) ? 1 : 0;
    }
    // Four standard deviations of a count of 200 on either side.
    assertEquals(200, alarms, 60);
  }

  @Test
  void needsMoreThanNoiseAndMoreThanScatter() {
    double[] low = {0, 0.1, 0, 0.1, 0, 0.1};
    double[] high = {1, 1.1, 1, 1.1, 1, 1.1};
    double[] quiet = {0.01, 0.01, 0.01, 0.01, 0.01, 0.01};
    double[] loud = {1, 1, 1, 1, 1, 1};
    assertTrue(MeanShift.of(low, high, quiet, quiet).isThere(1e-4));
    assertFalse(MeanShift.of(low, high, loud, loud).isThere(1e-4));
    assertFalse(MeanShift.of(new double[] {0}, new double[] {1}, quiet, quiet).isThere(0.5));
  }
}
