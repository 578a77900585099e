package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against the sum as it is defined, one bin at a time. */
class AnalyticValueTest {
  private static final int TRANSFORM = 4096;
  private static final double LAG = 1234.567;

  /** How much later the bins' envelope is highest, but for some noise. */
  private static final double AHEAD = 0.3;

  private static final int OFFSET = 40;
  private static final int LOWEST = 57;
  private static final int HIGHEST = 1001;

  private final double[] bins = new double[2 * (HIGHEST + 1 - OFFSET)];

  AnalyticValueTest() {
    Random random = new Random(8);
    for (int i = 0; i < bins.length; i += 2) {
      double phase = -2 * Math.PI * (OFFSET + i / 2) * (LAG + AHEAD) / TRANSFORM;
      bins[i] = Math.cos(phase) + 0.1 * random.nextGaussian();
      bins[i + 1] = Math.sin(phase) + 0.1 * random.nextGaussian();
    }
  }

  private double defined(int order, double centre, double quarters) {
    double sum = 0;
    for (int k = LOWEST; k <= HIGHEST; k++) {
      double omega = 2 * Math.PI * (k - centre) / TRANSFORM;
      double turned = 2 * Math.PI * k * LAG / TRANSFORM + Math.PI / 2 * (order - quarters);
      double re = bins[2 * (k - OFFSET)];
      double im = bins[2 * (k - OFFSET) + 1];
      sum += Math.pow(omega, order) * (re * Math.cos(turned) - im * Math.sin(turned));
    }
    return sum;
  }

  private AnalyticValue summed(double centre) {
    return new AnalyticValue(TRANSFORM, LAG, centre).add(bins, OFFSET, LOWEST, HIGHEST);
  }

  @Test
  void isTheSumOfItsBinsWithItsDerivatives() {
    AnalyticValue sum = summed(0);
    assertEquals(defined(0, 0, 0), sum.re(), 1e-9);
    assertEquals(defined(0, 0, 1), sum.im(), 1e-9);
    assertEquals(defined(1, 0, 0), sum.reSlope(), 1e-9);
    assertEquals(defined(2, 0, 0), sum.reCurvature(), 1e-9);
  }

  @Test
  void leadsToTheTopOfTheEnvelopeFromItsDerivativesAboutTheMiddle() {
    double centre = (LOWEST + HIGHEST) / 2.0;
    double re = defined(0, centre, 0);
    double im = defined(0, centre, 1);
    double slope = re * defined(1, centre, 0) + im * defined(1, centre, 1);
    double curvature =
        Math.pow(defined(1, centre, 0), 2)
            + Math.pow(defined(1, centre, 1), 2)
            + re * defined(2, centre, 0)
            + im * defined(2, centre, 1);
    assertEquals(-slope / curvature, summed(centre).newtonStep(), 1e-9);
    assertEquals(AHEAD, summed(centre).newtonStep(), 0.05);
    assertEquals(Math.hypot(re, im), summed(centre).magnitude(), 1e-9);
  }

  @Test
  void ofNoBinsIsNothing() {
    AnalyticValue none = new AnalyticValue(TRANSFORM, LAG, 0).add(bins, OFFSET, LOWEST, LOWEST - 1);
    assertEquals(0, none.magnitude());
  }
}
