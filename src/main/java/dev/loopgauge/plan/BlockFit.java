package dev.loopgauge.plan;

import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;

/**
 * How a measured loop grows with the block size: a number of blocks and a fixed part.
 *
 * @param rate the sample rate it was measured at
 * @param blocks how many blocks, 0 or more, not always whole
 * @param fixedSamples the part that does not grow, in samples, finite
 */
public record BlockFit(SampleRate rate, double blocks, double fixedSamples) {
  /**
   * Checks both numbers.
   *
   * @throws IllegalArgumentException when one is no number, or there are fewer than no blocks
   */
  public BlockFit {
    if (!(blocks >= 0 && Double.isFinite(blocks)) || !Double.isFinite(fixedSamples)) {
      throw new IllegalArgumentException(
          "a fit must have 0 blocks or more and a finite fixed part, not "
              + (blocks + " and " + fixedSamples));
    }
  }

  /** The delay of the loop at a block size. */
  public Latency loop(int blockSize) {
    return new Latency(blocks * blockSize + fixedSamples, rate);
  }
}
