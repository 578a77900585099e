package dev.loopgauge.capture.simulated;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.signal.Decibels;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The truth here is the sine itself, written down late. */
final class InterpolationTest {
  private static final int LENGTH = 2_000;
  private static final int EDGE = 400;

  @ParameterizedTest
  @ValueSource(doubles = {0.001, 0.01, 0.1, 0.25, 0.4, 0.42})
  void staysNinetyDecibelsBelowTheSound(double cyclesPerSample) {
    for (int step = 0; step < 40; step++) {
      double delay = 100 + step / 40.0;
      double[] late = Interpolation.delayed(sine(cyclesPerSample, 0), delay);
      double worst = worstDifference(late, sine(cyclesPerSample, delay));
      assertTrue(
          Decibels.ofFactor(worst) < -90,
          "off by %s dB at a delay of %s".formatted(Decibels.ofFactor(worst), delay));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.001, 0.01, 0.1, 0.25, 0.4, 0.42})
  void delaysToAThousandthOfASample(double cyclesPerSample) {
    for (int step = 0; step < 40; step++) {
      double delay = 100 + step / 40.0;
      double[] late = Interpolation.delayed(sine(cyclesPerSample, 0), delay);
      double found = delay + delayBeyond(late, cyclesPerSample, delay);
      assertEquals(delay, found, 1e-3);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void leavesSamplesAloneThatMoveByWholeSamples(long seed) {
    double[] noise = new SplittableRandom(seed).doubles(300, -1, 1).toArray();
    double[] expected = new double[300];
    System.arraycopy(noise, 0, expected, 17, 283);
    assertArrayEquals(expected, Interpolation.delayed(noise, 17), 1e-12, "seed " + seed);
  }

  @ParameterizedTest
  @ValueSource(doubles = {500.0, 500.5, 731.123})
  void readsBetweenSamples(double position) {
    double expected = Math.sin(2 * Math.PI * 0.3 * position);
    assertEquals(expected, Interpolation.at(sine(0.3, 0), position), 3e-5);
  }

  private static double[] sine(double cyclesPerSample, double delay) {
    double[] sine = new double[LENGTH];
    for (int i = 0; i < LENGTH; i++) {
      sine[i] = Math.sin(2 * Math.PI * cyclesPerSample * (i - delay));
    }
    return sine;
  }

  private static double worstDifference(double[] a, double[] b) {
    double worst = 0;
    for (int i = EDGE; i < LENGTH - EDGE; i++) {
      worst = Math.max(worst, Math.abs(a[i] - b[i]));
    }
    return worst;
  }

  /**
   * How much later than {@code delay} the sine lies, by its phase: least squares in sin and cos.
   */
  private static double delayBeyond(double[] late, double cyclesPerSample, double delay) {
    double ss = 0;
    double sc = 0;
    double cc = 0;
    double ys = 0;
    double yc = 0;
    for (int i = EDGE; i < LENGTH - EDGE; i++) {
      double phase = 2 * Math.PI * cyclesPerSample * (i - delay);
      double sin = Math.sin(phase);
      double cos = Math.cos(phase);
      ss += sin * sin;
      sc += sin * cos;
      cc += cos * cos;
      ys += late[i] * sin;
      yc += late[i] * cos;
    }
    double inPhase = ys * cc - yc * sc;
    double ahead = yc * ss - ys * sc;
    return -Math.atan2(ahead, inPhase) / (2 * Math.PI * cyclesPerSample);
  }
}
