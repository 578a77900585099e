package dev.loopgauge.signal.filter;

import dev.loopgauge.signal.Limits;
import dev.loopgauge.signal.SampleRate;

/**
 * Turns the phase and leaves the level: by 90 degrees at the corner and 180 far above it for the
 * first order, which so inverts the treble; by 180 and 360 for the second, whose quality is 1 /
 * sqrt(2).
 *
 * <p>Source: R. Bristow-Johnson, "Audio EQ Cookbook", for the second order's analogue prototype
 * (from memory).
 *
 * @param hertz the corner, 1 to 384000 Hz
 * @param order 1 or 2
 */
public record AllPass(double hertz, int order) implements Design {
  private static final Prototype FIRST = new Prototype.First(-1, 1, 1, 1);
  private static final Prototype SECOND =
      new Prototype.Second(1, -Math.sqrt(2), 1, 1, Math.sqrt(2), 1);

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException when a figure is out of range
   */
  public AllPass {
    Limits.check("the corner", hertz, Prototype.LOWEST_HZ, Prototype.HIGHEST_HZ, "Hz");
    Limits.check("an all-pass's order", order, 1, 2, "(90 degrees at the corner each)");
  }

  @Override
  public Filter at(SampleRate rate) {
    return (order == 1 ? FIRST : SECOND).at(hertz, rate);
  }
}
