package dev.loopgauge.estimate.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.BitSet;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FlatTopsTest {
  private static final int LENGTH = 4800;

  private static double[] clipped(double[] sound, double low, double high) {
    return Arrays.stream(sound).map(v -> Math.max(low, Math.min(high, v))).toArray();
  }

  private static double[] tone(double hertz, double amplitude) {
    double[] tone = new double[LENGTH];
    Arrays.setAll(tone, i -> amplitude * Math.sin(2 * Math.PI * hertz * i / 48_000 + 0.1));
    return tone;
  }

  private static double[] noise(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] noise = new double[LENGTH];
    Arrays.setAll(noise, i -> 0.2 * random.nextGaussian());
    return noise;
  }

  private static double[] rounded(double[] sound, int bits) {
    double full = Math.pow(2, bits - 1);
    return Arrays.stream(sound).map(v -> Math.rint(v * full) / full).toArray();
  }

  private static BitSet clipped(double[] ret, double[] reference, double[] predicted) {
    return FlatTops.of(ret).against(reference, predicted);
  }

  @Test
  void clippedNoiseIsFoundOnEitherSide() {
    double[] sound = noise(1);
    double[] ret = rounded(clipped(sound, -0.4, 9), 24);
    BitSet found = clipped(ret, sound, sound);
    assertEquals(Arrays.stream(sound).filter(v -> v < -0.4).count(), found.cardinality());
    assertEquals(-0.4, ret[found.nextSetBit(0)], 1e-6);
  }

  @Test
  void soundThatIsNotClippedHasNone() {
    assertTrue(FlatTops.of(rounded(noise(2), 24)).isEmpty());
    assertTrue(FlatTops.of(new double[100]).isEmpty());
  }

  /** Each second sample is at its highest; so is the reference. */
  @Test
  void sequenceOfTwoValuesIsNotClipped() {
    SplittableRandom random = new SplittableRandom(3);
    double[] sequence = new double[LENGTH];
    Arrays.setAll(sequence, i -> i < 1000 ? 0 : random.nextBoolean() ? 0.5 : -0.5);
    assertTrue(clipped(sequence, sequence, sequence).isEmpty());
  }

  @Test
  void sequenceClippedByConverterIs() {
    SplittableRandom random = new SplittableRandom(4);
    double[] sequence = new double[LENGTH];
    Arrays.setAll(sequence, i -> random.nextBoolean() ? 0.5 : -0.5);
    double[] passed = new double[LENGTH];
    for (int i = 2; i < LENGTH - 2; i++) {
      passed[i] =
          0.9 * sequence[i]
              + 0.3 * (sequence[i - 1] + sequence[i + 1])
              - 0.1 * sequence[i + 2]
              + 0.01 * random.nextGaussian();
    }
    double[] ret = clipped(passed, -0.55, 0.55);
    assertTrue(clipped(ret, sequence, passed).cardinality() > LENGTH / 5);
  }

  /** The crest of a low tone rests on one value of a converter for several samples. */
  @Test
  void lowToneInFewBitsIsNotClipped() {
    double[] tone = tone(40, 0.3);
    double[] ret = rounded(tone, 16);
    assertTrue(clipped(ret, tone, tone).isEmpty());
    assertTrue(clipped(ret, tone, new double[LENGTH]).isEmpty());
  }

  /** A fitted path makes anything of a click, a flat top too. */
  @Test
  void clickWithThreeEqualSamplesIsClippedHoweverWellPredicted() {
    double[] click = new double[LENGTH];
    double[] ret = new double[LENGTH];
    System.arraycopy(new double[] {0.1, 0.5, 0.9, 0.6, 0.2}, 0, click, 100, 5);
    System.arraycopy(new double[] {0.1, 0.5, 0.5, 0.5, 0.2}, 0, ret, 100, 5);
    assertEquals(3, clipped(ret, click, ret).cardinality());
    ret[103] = 0.45;
    assertTrue(clipped(ret, click, ret).isEmpty());
  }
}
