package dev.loopgauge.estimate.integrity;

import dev.loopgauge.signal.Samples;

/**
 * How much of a return is clipped that was not so in its reference: a maximum-length sequence has
 * flat tops of its own.
 *
 * @param share the share of its samples, 0 to 1
 */
public record Clipping(double share) {
  /** Clipping that touches more of the samples than this is no small matter. */
  private static final double HARMLESS = 0.001;

  /** What a return is clipped more than its reference. */
  public static Clipping of(Samples reference, Samples ret) {
    double share = FlatTops.share(ret);
    return new Clipping(share == 0 ? 0 : Math.max(0, share - FlatTops.share(reference)));
  }

  /** The worse of two. */
  public Clipping or(Clipping other) {
    return other.share > share ? other : this;
  }

  /** Whether the delay can't be trusted any more. */
  public boolean spoils() {
    return share > HARMLESS;
  }
}
