package dev.loopgauge.plan;

import dev.loopgauge.signal.Decibels;
import java.util.OptionalDouble;

/**
 * The comb filter that a sound and one delayed copy of it, of the same polarity, make where they
 * are heard together: F. Alton Everest, Master Handbook of Acoustics, chapter 10 (the publisher's
 * text).
 *
 * @param delayMs how much later the copy is, in ms, 0 or more
 * @param levelDifferenceDb how far apart the two are in level, in dB, 0 or more
 */
public record Comb(double delayMs, double levelDifferenceDb) {
  /**
   * Checks both ranges.
   *
   * @throws IllegalArgumentException when one is negative or not finite
   */
  public Comb {
    check("delay in ms", delayMs);
    check("level difference in dB", levelDifferenceDb);
  }

  private static void check(String what, double value) {
    if (!(value >= 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException(what + " must be 0 or more and finite, not " + value);
    }
  }

  /** The lowest frequency that is weakened most, 1/(2t), in Hz; empty where nothing is delayed. */
  public OptionalDouble firstNullHz() {
    return delayMs == 0 ? OptionalDouble.empty() : OptionalDouble.of(1000 / (2 * delayMs));
  }

  /** How far the next null is from each, 1/t, in Hz; empty where nothing is delayed. */
  public OptionalDouble nullSpacingHz() {
    return delayMs == 0 ? OptionalDouble.empty() : OptionalDouble.of(1000 / delayMs);
  }

  /**
   * From peak to dip, 20 log10((1 + g) / (1 - g)) for a copy at g times the level, in dB; empty for
   * equal levels, which cancel entirely in the nulls.
   */
  public OptionalDouble rippleDb() {
    double factor = Decibels.toFactor(-levelDifferenceDb);
    return factor == 1
        ? OptionalDouble.empty()
        : OptionalDouble.of(Decibels.ofFactor((1 + factor) / (1 - factor)));
  }
}
