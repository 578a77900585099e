package dev.loopgauge.estimate.result;

import dev.loopgauge.stats.Slope;

/**
 * How two clocks drift apart.
 *
 * @param ppm how fast the return falls behind, in parts per million; negative when it runs ahead
 * @param uncertaintyPpm the expanded uncertainty of that, k = 2, in parts per million
 */
public record ClockDrift(double ppm, double uncertaintyPpm) {
  /** How often a series without a drift may show one, whatever its jitter. */
  private static final double FALSE_ALARMS = 1 / 2000.0;

  /**
   * The same where values were set aside, or steps taken for granted, because of the values
   * themselves: what is left lies nearer to a line than chance alone would have it.
   */
  private static final double FALSE_ALARMS_SELECTED = 1e-6;

  /**
   * What warmth alone may move a clock by within a measurement: a drift below it is none, and no
   * uncertainty below it is printed, in parts per million. An AT-cut crystal that keeps within 10
   * ppm from -35 to 85 degrees goes as -0.2 x + 1e-4 x^3 ppm at x kelvin beyond 25 degrees (R.
   * Bechmann's cubic, from memory), so by this for each kelvin where people are (derived).
   */
  public static final double LEAST_PPM = 0.2;

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
  public static ClockDrift of(Slope perSample) {
    Slope inPpm = perSample.times(1e6);
    return new ClockDrift(inPpm.value(), inPpm.expanded());
  }

  /** Whether delays over time rise or fall so that neither noise nor jitter can be why. */
  public static boolean isThere(Slope perSample) {
    return isThere(perSample, FALSE_ALARMS);
  }

  /** The same where the values left were chosen by themselves. */
  public static boolean isThereAmongSelected(Slope perSample) {
    return isThere(perSample, FALSE_ALARMS_SELECTED);
  }

  private static boolean isThere(Slope perSample, double falseAlarms) {
    return Math.abs(perSample.value()) > LEAST_PPM * 1e-6 && perSample.isThere(falseAlarms);
  }

  /** Whether the drift is of any account, if it is there. */
  public boolean isLarge() {
    return Math.abs(ppm) > LEAST_PPM;
  }

  /** The same drift and a further one that was measured on top of it. */
  public ClockDrift plus(ClockDrift further) {
    return new ClockDrift(ppm + further.ppm, further.uncertaintyPpm);
  }
}
