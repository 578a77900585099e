package dev.loopgauge.signal.filter;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Limits;
import dev.loopgauge.signal.SampleRate;

/**
 * An equaliser's shelf of second order: all that lies on one side of the corner is louder or
 * quieter, by half the decibels at the corner. The slope is the steepest without a bump (the
 * cookbook's S = 1).
 *
 * <p>Source: R. Bristow-Johnson, "Audio EQ Cookbook", its analogue prototypes (from memory; a test
 * compares the coefficients with the cookbook's digital ones).
 *
 * @param side which side is changed
 * @param hertz the corner, 1 to 384000 Hz
 * @param db by how much, -40 to 40 dB
 */
public record Shelf(Side side, double hertz, double db) implements Design {
  /** A side of the corner. */
  public enum Side {
    /** What lies below. */
    LOW,
    /** What lies above. */
    HIGH
  }

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException when a figure is out of range
   */
  public Shelf {
    Limits.check("the corner", hertz, Prototype.LOWEST_HZ, Prototype.HIGHEST_HZ, "Hz");
    Limits.check("the shelf", db, -40, 40, "dB");
  }

  @Override
  public Filter at(SampleRate rate) {
    return (side == Side.LOW ? low() : low().mirrored()).at(hertz, rate);
  }

  private Prototype low() {
    double a = Math.sqrt(Decibels.toFactor(db));
    double middle = Math.sqrt(2 * a);
    return new Prototype.Second(a, a * middle, a * a, a, middle, 1);
  }
}
