package dev.loopgauge.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class NormalTailTest {
  /** The half-normal distribution's mean, the square root of 2 over pi. */
  @Test
  void aboveTheMeanItIsThatOfHalfADistribution() {
    assertEquals(Math.sqrt(2 / Math.PI), NormalTail.meanExcess(0), 1e-12);
  }

  @Test
  void farBelowTheMeanItIsTheDistanceToIt() {
    assertEquals(9, NormalTail.meanExcess(-9), 1e-12);
  }

  @Test
  void farAboveTheMeanItFallsAsTheLimitRises() {
    assertEquals(NormalTail.meanExcess(20), NormalTail.meanExcess(20.0001), 1e-5);
    assertEquals(1e-6, NormalTail.meanExcess(1e6), 1e-12);
  }

  @Test
  void isTheMeanOfWhatSeededValuesLieAbove() {
    SplittableRandom random = new SplittableRandom(7);
    double sum = 0;
    int count = 0;
    for (int i = 0; i < 400_000; i++) {
      double value = random.nextGaussian();
      sum += value > 1.3 ? value - 1.3 : 0;
      count += value > 1.3 ? 1 : 0;
    }
    assertEquals(NormalTail.meanExcess(1.3), sum / count, 0.006);
  }
}
