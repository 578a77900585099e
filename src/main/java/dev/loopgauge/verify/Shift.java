package dev.loopgauge.verify;

import dev.loopgauge.estimate.result.Measurement;

/**
 * How far a delay moved between two measurements.
 *
 * @param samples how much later the second is than the first
 * @param uncertaintySamples the expanded uncertainty of that, k = 2
 */
public record Shift(double samples, double uncertaintySamples) {
  /** Air and clocks breathe: less than this is no move, whatever the uncertainty says. */
  private static final double LEAST_SAMPLES = 0.1;

  /**
   * From one measurement to another; the uncertainties add as squares (JCGM 100:2008, 5.1.2).
   *
   * @throws IllegalArgumentException when their rates differ
   */
  static Shift between(Measurement first, Measurement second) {
    return new Shift(
        second.delay().minus(first.delay()).samples(),
        Math.hypot(first.uncertaintySamples(), second.uncertaintySamples()));
  }

  /** Whether it is more than uncertainty allows for. */
  public boolean moved() {
    return Math.abs(samples) > Math.max(uncertaintySamples, LEAST_SAMPLES);
  }
}
