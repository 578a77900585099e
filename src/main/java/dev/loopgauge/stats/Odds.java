package dev.loopgauge.stats;

/** How much likelier one explanation must be than another to be told as what happened. */
public final class Odds {
  /**
   * The least logarithm of likelihoods that leaves no doubt: e^16, nine million to one. Where many
   * places or lags were searched for the best, the logarithm of their number comes off first (C. E.
   * Bonferroni's inequality).
   */
  public static final double BEYOND_DOUBT = 16;

  /** What chance alone does no more often than this is not taken for chance. */
  public static final double BY_CHANCE = 1e-4;

  private Odds() {}
}
