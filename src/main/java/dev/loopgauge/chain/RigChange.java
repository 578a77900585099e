package dev.loopgauge.chain;

import dev.loopgauge.signal.SampleRate;

/** A change that every path through the rig notices. */
public sealed interface RigChange extends Change {
  /**
   * The host runs at another block size.
   *
   * @param samples its block, 1 to {@value Conditions#LARGEST_BLOCK} samples
   */
  record BlockSize(int samples) implements RigChange {
    /**
     * Checks the range.
     *
     * @throws IllegalArgumentException when out of range
     */
    public BlockSize {
      Conditions.checkBlockSize(samples);
    }

    @Override
    public ChangeKind kind() {
      return ChangeKind.BLOCK_SIZE;
    }

    @Override
    public String value() {
      return Integer.toString(samples);
    }

    @Override
    public Chain on(Chain chain) {
      return chain.withBlockSize(samples);
    }

    @Override
    public String told(Chain before) {
      return "the host runs at a block of " + samples + " samples, not " + before.blockSize();
    }
  }

  /**
   * The rig runs on another word clock.
   *
   * @param rate its rate
   */
  record WordClock(SampleRate rate) implements RigChange {
    @Override
    public ChangeKind kind() {
      return ChangeKind.SAMPLE_RATE;
    }

    @Override
    public String value() {
      return Integer.toString(rate.hertz());
    }

    @Override
    public Chain on(Chain chain) {
      return chain.withSampleRate(rate);
    }

    @Override
    public String told(Chain before) {
      return "the rig runs at " + rate.hertz() + " Hz, not " + before.rate().hertz();
    }
  }
}
