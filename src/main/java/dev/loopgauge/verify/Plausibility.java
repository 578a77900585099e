package dev.loopgauge.verify;

import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.HostChange;
import dev.loopgauge.chain.RigChange;
import dev.loopgauge.chain.StageChange;

/**
 * How readily a change is believed before anything is measured, as its cost: each point makes it
 * 2.7 times less likely (the negative logarithm of a relative likelihood). The figures are
 * judgement: common practice, no source.
 */
final class Plausibility {
  /** That two things are wrong at once. */
  static final double SECOND_CHANGE = 2.5;

  /** No two changes cost less: a block size that is a power of two costs nothing by itself. */
  static final double LEAST_OF_TWO = SECOND_CHANGE;

  private Plausibility() {}

  static double cost(Change change) {
    if (change instanceof RigChange.BlockSize size) {
      return Integer.bitCount(size.samples()) == 1 ? 0 : 0.5;
    }
    if (change instanceof HostChange.BlockSize size) {
      return Integer.bitCount(size.samples()) == 1 ? 0 : 0.5;
    }
    if (change instanceof RigChange.WordClock || change instanceof HostChange.WordClock) {
      return 1.5;
    }
    if (change instanceof StageChange.HostBlocks blocks) {
      return Math.abs(blocks.more()) - 0.3;
    }
    if (change instanceof StageChange.Absent || change instanceof StageChange.NotCompensated) {
      return 1;
    }
    return change instanceof StageChange.Twice ? 1.5 : 2;
  }
}
