package dev.loopgauge.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class OneStepTest {
  private static final double CHANCE = 1e-3;
  private static final int COUNT = 16;

  private static double[] even() {
    double[] weights = new double[COUNT];
    Arrays.fill(weights, 1);
    return weights;
  }

  private static double[] noise(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] values = new double[COUNT];
    for (int i = 0; i < COUNT; i++) {
      values[i] = random.nextGaussian();
    }
    return values;
  }

  @Test
  void findsAStepWithinAValueByHand() {
    double[] values = {1, 1.2, 0.8, 1, 2.5, 3, 3.1, 2.9};
    double[] weights = {1, 1, 1, 1, 1, 1, 1, 1};
    OneStep step = OneStep.of(values, weights).orElseThrow();
    assertEquals(4, step.at());
    assertEquals(2, step.value(), 1e-12);
    assertEquals(0.25, step.share(), 1e-12);
    assertEquals(0.08 + 0.02, step.left(), 1e-12);
    assertEquals(1.0 / 4 + 1.0 / 3, step.spread(), 1e-12);
    assertTrue(step.isThere(CHANCE));
  }

  @Test
  void weighsEachValue() {
    double[] values = {0, 2, 5, 10, 10, 99};
    double[] weights = {3, 1, 1, 1, 1, 0};
    OneStep step = OneStep.of(values, weights).orElseThrow();
    assertEquals(10 - 0.5, step.value(), 1e-12);
    assertEquals(5, step.count());
  }

  @Test
  void aValueThatLiesOffAloneIsNoStep() {
    for (int at = 0; at < COUNT; at++) {
      double[] values = new double[COUNT];
      for (int i = 0; i < COUNT; i++) {
        values[i] = 0.01 * (i % 3);
      }
      values[at] = 50;
      Optional<OneStep> step = OneStep.of(values, even());
      assertFalse(step.orElseThrow().isThere(CHANCE), at + ": " + step);
    }
  }

  @Test
  void tooFewValuesTellNoStep() {
    assertTrue(OneStep.of(new double[] {1, 1, 2}, new double[] {1, 1, 1}).isEmpty());
    assertTrue(OneStep.of(new double[] {1, 1, 2, 2}, new double[] {1, 1, 0, 0}).isEmpty());
  }

  /** 100,000 series of noise: 100 would be allowed; Bonferroni's bound leaves fewer. */
  @Test
  void noiseGivesAStepNoMoreOftenThanStated() {
    int told = 0;
    for (int seed = 0; seed < 100_000; seed++) {
      told += OneStep.of(noise(seed), even()).orElseThrow().isThere(CHANCE) ? 1 : 0;
    }
    assertTrue(told <= 100, "told " + told);
    assertTrue(told >= 20, "far stricter than need be: " + told);
  }

  /** What mostly settles it is a bound: it never tells otherwise than the chance itself. */
  @Test
  void isThereJustWhereItsChanceIsSmall() {
    int told = 0;
    for (int seed = 0; seed < 2_000; seed++) {
      double[] values = noise(seed);
      for (int i = COUNT / 2; i < COUNT; i++) {
        values[i] += seed * 2e-3;
      }
      OneStep step = OneStep.of(values, even()).orElseThrow();
      double scatter = Math.sqrt(step.left() / (COUNT - 3) * step.spread());
      double chance = Quantiles.studentBeyond(step.value() / scatter, COUNT - 3.0);
      assertEquals(COUNT * chance < CHANCE, step.isThere(CHANCE), step::toString);
      told += step.isThere(CHANCE) ? 1 : 0;
    }
    assertTrue(told > 200 && told < 1_800, "told " + told);
  }

  @Test
  void aLineIsNoStepAndAStepNoLine() {
    double[] times = new double[COUNT];
    int steps = 0;
    int lines = 0;
    for (int seed = 0; seed < 1000; seed++) {
      double[] rising = noise(seed);
      double[] stepped = noise(seed);
      for (int i = 0; i < COUNT; i++) {
        times[i] = i;
        rising[i] += i;
        stepped[i] += i < 7 ? 0 : 8;
      }
      steps += odds(times, stepped) > 0 ? 1 : 0;
      lines += odds(times, rising) < 0 ? 1 : 0;
    }
    assertTrue(steps > 990, "steps told " + steps);
    assertTrue(lines > 990, "lines told " + lines);
  }

  private static double odds(double[] times, double[] values) {
    StraightLine line = StraightLine.weighted(times, values, even());
    return OneStep.of(values, even()).orElseThrow().oddsAgainst(line);
  }
}
