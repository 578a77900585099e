package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.SampleRate;

/** A fault of the chain: the rig is not the one that the chain file describes. */
sealed interface ChainFault extends Fault {
  /**
   * The host was left at another block size.
   *
   * @param samples its block, 1 to 65536 samples
   */
  record BlockSize(int samples) implements ChainFault {
    public BlockSize {
      Limits.check("the block size", samples, 1, 65_536, "samples");
    }
  }

  /**
   * The rig runs at another rate than the card, and meets it in analogue: what it delays by samples
   * takes longer at a lower rate.
   *
   * @param rate the rig's rate
   */
  record ClockRate(SampleRate rate) implements ChainFault {}

  /**
   * A stage was left out.
   *
   * @param stage its name in the chain file
   */
  record Absent(String stage) implements ChainFault {}

  /**
   * The sound runs through a stage twice, as through an insert patched two times.
   *
   * @param stage its name in the chain file
   */
  record Twice(String stage) implements ChainFault {}
}
