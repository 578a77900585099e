package dev.loopgauge.estimate;

import dev.loopgauge.stats.Slope;

/**
 * How two clocks drift apart.
 *
 * @param ppm how fast the return falls behind, in parts per million; negative when it runs ahead
 * @param uncertaintyPpm the expanded uncertainty of that, k = 2, in parts per million
 */
public record ClockDrift(double ppm, double uncertaintyPpm) {
  /** Of so many series without a drift one may show one, whatever the jitter. */
  private static final double ONE_FALSE_ALARM_IN = 2000;

  /** A drift smaller than this is none, in parts per million. */
  private static final double LEAST_PPM = 0.2;

  /**
   * Checks that both are numbers.
   *
   * @throws IllegalArgumentException when one is not finite, or the uncertainty is negative
   */
  public ClockDrift {
    Finite.check("a clock drift", ppm);
    Finite.checkUncertainty("of a clock drift", uncertaintyPpm);
  }

  /** The drift that is a slope, in samples a sample. */
  static ClockDrift of(Slope perSample) {
    Slope inPpm = perSample.times(1e6);
    return new ClockDrift(inPpm.value(), inPpm.expanded());
  }

  /** Whether delays over time rise or fall so that neither noise nor jitter can be why. */
  static boolean isThere(Slope perSample) {
    return Math.abs(perSample.value()) > LEAST_PPM * 1e-6
        && perSample.isThere(1 / ONE_FALSE_ALARM_IN);
  }

  /** The same drift and a further one that was measured on top of it. */
  ClockDrift plus(ClockDrift further) {
    return new ClockDrift(ppm + further.ppm, further.uncertaintyPpm);
  }
}
