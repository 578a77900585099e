package dev.loopgauge.estimate.integrity;

/**
 * What clipped samples do to a reading: how the delay would differ if they were unknown.
 *
 * @param share the share of the return's samples that are clipped, above 0 to 1
 * @param movedSamples how far the delay is from that without the clipped samples, 0 or more
 * @param spread by what factor the variance of the delay is larger without them, at least 1
 * @param movedDb how far the level is from that without them, in dB, 0 or more
 */
public record Clipping(double share, double movedSamples, double spread, double movedDb) {
  /**
   * From here on the clipped samples held more than half of what tells the delay, and the
   * difference to what it is without them is itself less certain than the delay (J. A. Hausman,
   * "Specification tests in econometrics", Econometrica 46(6), 1978, from memory: its variance is
   * the difference of the two variances).
   */
  public static final double MOST_SPREAD = 2;

  /** The worse of each figure of two. */
  public Clipping or(Clipping other) {
    return new Clipping(
        Math.max(share, other.share),
        Math.max(movedSamples, other.movedSamples),
        Math.max(spread, other.spread),
        Math.max(movedDb, other.movedDb));
  }

  /** Whether the delay could be moved by more than its uncertainty, and nothing tells how far. */
  public boolean spoils() {
    return !(spread < MOST_SPREAD && Double.isFinite(movedSamples));
  }

  /**
   * What clipping adds to the standard uncertainty of the delay, in samples.
   *
   * @param fromNoise the standard uncertainty from noise, in samples
   */
  public double standard(double fromNoise) {
    return Math.hypot(movedSamples, fromNoise * Math.sqrt(spread - 1));
  }
}
