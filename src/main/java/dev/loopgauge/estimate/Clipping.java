package dev.loopgauge.estimate;

import java.util.List;

/**
 * How much of a return is clipped that was not so in its reference: a maximum-length sequence has
 * flat tops of its own.
 *
 * @param share the share of its samples, 0 to 1
 */
record Clipping(double share) {
  /** Clipping that touches more of the samples than this is no small matter. */
  private static final double HARMLESS = 0.001;

  /** The clipping of the worst of some readings. */
  static Clipping of(List<Reading> readings) {
    double most = 0;
    for (Reading reading : readings) {
      double given = ChannelSurvey.of(reading.reference()).clippedShare();
      most = Math.max(most, ChannelSurvey.of(reading.ret()).clippedShare() - given);
    }
    return new Clipping(most);
  }

  /** Whether the delay can't be trusted any more. */
  boolean spoils() {
    return share > HARMLESS;
  }
}
