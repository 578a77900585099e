package dev.loopgauge.plan;

/**
 * Two copies of a sound that are heard together.
 *
 * <p>What comes of them is read from published listening tests. Where these leave a gap, from 35 to
 * 50 ms, the copies are said to colour. A delay that may lie on either side, by its tolerance,
 * counts as the worse of the two.
 *
 * @param delayMs how much later the second is, in ms, 0 or more
 * @param toleranceMs how far off that may be either way, in ms, 0 or more
 * @param laterLevelDb how much louder the second is than the first, in dB
 */
public record Overlap(double delayMs, double toleranceMs, double laterLevelDb) {
  /** The highest frequency that people hear, in Hz: common practice, no source. */
  private static final double HIGHEST_HEARD_HZ = 20_000;

  /** A copy 22 dB below can still be heard in speech: Brunner and others, 2007 (reported). */
  private static final double LOWEST_HEARD_DB = -22;

  /** Precedence holds from here: Haas, after Everest, Master Handbook of Acoustics. */
  private static final double PRECEDENCE_FROM_MS = 5;

  /** Precedence holds up to here: Haas, after Everest, Master Handbook of Acoustics. */
  private static final double PRECEDENCE_TO_MS = 35;

  /** Under precedence, a copy must be so much louder to be an echo: Haas, after Everest. */
  private static final double LOUDER_DB = 10;

  /** Discrete echoes begin at 50 to 100 ms: Everest, Master Handbook of Acoustics. */
  private static final double ECHO_FROM_MS = 50;

  private static final String HAAS = "(Haas, after Everest)";

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException when one is out of range
   */
  public Overlap {
    new Comb(delayMs, Math.abs(laterLevelDb));
    if (!(toleranceMs >= 0 && Double.isFinite(toleranceMs))) {
      throw new IllegalArgumentException(
          "tolerance must be 0 ms or more and finite, not " + toleranceMs);
    }
  }

  /** The comb filter of the two. */
  public Comb comb() {
    return new Comb(delayMs, Math.abs(laterLevelDb));
  }

  /** What comes of the two. */
  public Blend effect() {
    if (isApart() || isLoudAndLate()) {
      return Blend.ECHO;
    }
    return isTooQuiet() || isAboveHearing() ? Blend.SAFE : Blend.COLOURS;
  }

  /** Why, and who says so; a few words for the screen. */
  public String reason() {
    if (isApart()) {
      return "heard apart from 50-100 ms on (Everest)";
    }
    if (isLoudAndLate()) {
      return "at 5-35 ms a copy 10 dB louder is heard as an echo " + HAAS;
    }
    if (isTooQuiet()) {
      return "more than 22 dB down, no copy was heard (Brunner et al. 2007)";
    }
    if (isAboveHearing()) {
      return "no null below 20 kHz (Everest)";
    }
    if (delayMs < PRECEDENCE_FROM_MS) {
      return "blends to one sound with a comb filter (Everest)";
    }
    return delayMs <= PRECEDENCE_TO_MS
        ? "5-35 ms blend to one sound, located at the first " + HAAS
        : "too late to blend with the first (35 ms), not yet a separate echo (50 ms) " + HAAS;
  }

  private boolean isApart() {
    return delayMs + toleranceMs >= ECHO_FROM_MS;
  }

  private boolean isLoudAndLate() {
    return laterLevelDb >= LOUDER_DB && delayMs + toleranceMs >= PRECEDENCE_FROM_MS;
  }

  private boolean isTooQuiet() {
    return Math.abs(laterLevelDb) > -LOWEST_HEARD_DB;
  }

  private boolean isAboveHearing() {
    return new Comb(delayMs + toleranceMs, 0).firstNullHz().orElse(Double.MAX_VALUE)
        > HIGHEST_HEARD_HZ;
  }
}
