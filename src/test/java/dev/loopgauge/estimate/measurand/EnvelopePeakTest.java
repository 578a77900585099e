package dev.loopgauge.estimate.measurand;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class EnvelopePeakTest {
  private static final double[] OMEGAS = new double[40];
  private static final double[] WIDTHS = new double[40];
  private static final double[] ONES = new double[40];

  static {
    Arrays.setAll(OMEGAS, i -> 0.2 + 0.03 * i);
    Arrays.fill(WIDTHS, 0.03);
    Arrays.fill(ONES, 1);
  }

  private static double[] phases(double delay, double turned) {
    return Arrays.stream(OMEGAS).map(omega -> turned - omega * delay).toArray();
  }

  @Test
  void findsADelayWhateverTheCarriersPhase() {
    for (double turned : new double[] {0, 1, 3, -2}) {
      EnvelopePeak peak = EnvelopePeak.of(OMEGAS, WIDTHS, ONES, phases(2.34, turned), ONES);
      assertEquals(2.34, peak.offset(), 1e-6);
    }
  }

  @Test
  void statesTheScatterThatNoiseGives() {
    SplittableRandom random = new SplittableRandom(5);
    double deviation = 0.1;
    double[] variances = new double[40];
    Arrays.fill(variances, deviation * deviation);
    double squares = 0;
    double stated = 0;
    int trials = 2000;
    for (int t = 0; t < trials; t++) {
      double[] amplitudes = new double[40];
      double[] phases = phases(1, 0.5);
      for (int i = 0; i < 40; i++) {
        double re = 1 + deviation * random.nextGaussian();
        double im = deviation * random.nextGaussian();
        amplitudes[i] = Math.hypot(re, im);
        phases[i] += Math.atan2(im, re);
      }
      EnvelopePeak peak = EnvelopePeak.of(OMEGAS, WIDTHS, amplitudes, phases, variances);
      squares += Math.pow(peak.offset() - 1, 2);
      stated += peak.standard() / trials;
    }
    double scatter = Math.sqrt(squares / trials);
    assertTrue(Math.abs(stated / scatter - 1) < 0.1, stated + " for " + scatter);
  }
}
