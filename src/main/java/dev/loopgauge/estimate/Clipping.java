package dev.loopgauge.estimate;

/**
 * How much of a return is clipped that was not so in its reference: a maximum-length sequence has
 * flat tops of its own.
 *
 * @param share the share of its samples, 0 to 1
 */
record Clipping(double share) {
  /** Clipping that touches more of the samples than this is no small matter. */
  private static final double HARMLESS = 0.001;

  /** What a return is clipped more than its reference. */
  static Clipping of(ChannelSurvey reference, ChannelSurvey ret) {
    return new Clipping(Math.max(0, ret.clippedShare() - reference.clippedShare()));
  }

  /** The worse of two. */
  Clipping or(Clipping other) {
    return other.share > share ? other : this;
  }

  /** Whether the delay can't be trusted any more. */
  boolean spoils() {
    return share > HARMLESS;
  }
}
