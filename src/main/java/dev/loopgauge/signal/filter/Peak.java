package dev.loopgauge.signal.filter;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Limits;
import dev.loopgauge.signal.SampleRate;

/**
 * A parametric equaliser: louder or quieter around one frequency.
 *
 * <p>Source: R. Bristow-Johnson, "Audio EQ Cookbook", its analogue prototype (from memory; a test
 * compares the coefficients with the cookbook's digital ones).
 *
 * @param hertz the middle, 1 to 384000 Hz
 * @param db by how much there, -40 to 40 dB
 * @param q the quality, the middle over the bandwidth: 0.1 to 100
 */
public record Peak(double hertz, double db, double q) implements Design {
  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException when a figure is out of range
   */
  public Peak {
    Limits.check("the middle", hertz, Prototype.LOWEST_HZ, Prototype.HIGHEST_HZ, "Hz");
    Limits.check("the peak", db, -40, 40, "dB");
    Limits.check("the quality", q, 0.1, 100, "(middle over bandwidth)");
  }

  @Override
  public Filter at(SampleRate rate) {
    double a = Math.sqrt(Decibels.toFactor(db));
    return new Prototype.Second(1, a / q, 1, 1, 1 / (a * q), 1).at(hertz, rate);
  }
}
