package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;

/**
 * What the audio settings of the host's computer say.
 *
 * @param blockSize samples computed at a time
 * @param rate the sample rate
 */
public record Setting(int blockSize, SampleRate rate) {
  /** How long the computer has for one block, in ms. */
  public double blockMs() {
    return new Latency(blockSize, rate).ms();
  }

  /**
   * The chain at this setting.
   *
   * @throws IllegalArgumentException when the block size is out of range
   */
  Chain of(Chain chain) {
    return chain.withBlockSize(blockSize).withSampleRate(rate);
  }
}
