package dev.loopgauge.signal.filter;

import dev.loopgauge.signal.SampleRate;
import java.util.List;

/**
 * A Linkwitz-Riley crossover: each branch is a Butterworth filter of half the order, twice, 6.02 dB
 * down at the crossover. The sum has a flat magnitude; it is an all-pass of half the order. For
 * that, the second order's sum takes the high branch inverted, as loudspeakers do; the branch by
 * itself isn't.
 *
 * <p>Source: S. H. Linkwitz, "Active crossover networks for noncoincident drivers", J. Audio Eng.
 * Soc. 24(1), 1976 (from memory).
 *
 * @param hertz where the branches cross, 1 to 384000 Hz
 * @param order of a branch, 2 or 4
 * @param output what is heard of it
 */
public record Crossover(double hertz, int order, Output output) implements Design {
  /** What is heard of a crossover. */
  public enum Output {
    /** What goes to the woofer. */
    LOW,
    /** What goes to the tweeter. */
    HIGH,
    /** Both together. */
    SUM
  }

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException when a figure is out of range
   */
  public Crossover {
    Butterworth.check(hertz, order);
    if (order % 2 == 1) {
      throw new IllegalArgumentException("a crossover's order must be 2 or 4, not " + order);
    }
  }

  @Override
  public Filter at(SampleRate rate) {
    return switch (output) {
      case LOW -> low(rate);
      case HIGH -> high(rate);
      case SUM -> new Parallel(List.of(low(rate), asSummed(high(rate))));
    };
  }

  private Filter low(SampleRate rate) {
    Filter half = Butterworth.lowPass(hertz, order / 2, rate);
    return Cascade.of(half, half);
  }

  private Filter high(SampleRate rate) {
    Filter half = Butterworth.highPass(hertz, order / 2, rate);
    return Cascade.of(half, half);
  }

  private Filter asSummed(Filter high) {
    return order == 2 ? Cascade.of(high, Biquad.gain(-1)) : high;
  }
}
