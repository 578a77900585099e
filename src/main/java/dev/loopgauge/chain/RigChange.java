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
    public String written() {
      return "block-size=" + samples;
    }

    @Override
    public String cause() {
      return "block-size";
    }

    @Override
    public Chain on(Chain chain) {
      return chain.withBlockSize(samples);
    }

    @Override
    public String told(Chain before) {
      return "the host runs at a block of %d samples, not %d"
          .formatted(samples, before.blockSize());
    }

    @Override
    public String check() {
      return "the block size in the host's audio settings";
    }
  }

  /**
   * The rig runs on another word clock.
   *
   * @param rate its rate
   */
  record WordClock(SampleRate rate) implements RigChange {
    @Override
    public String written() {
      return "sample-rate=" + rate.hertz();
    }

    @Override
    public String cause() {
      return "sample-rate";
    }

    @Override
    public Chain on(Chain chain) {
      return chain.withSampleRate(rate);
    }

    @Override
    public String told(Chain before) {
      return "the rig runs at %d Hz, not %d".formatted(rate.hertz(), before.rate().hertz());
    }

    @Override
    public String check() {
      return "the word clock and the sample rate of desk, host and stage boxes";
    }
  }
}
