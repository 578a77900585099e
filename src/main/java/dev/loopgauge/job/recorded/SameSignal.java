package dev.loopgauge.job.recorded;

import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;

/** The refusal of two channels that are one. */
final class SameSignal {
  /** Says so. */
  static final Finding FINDING =
      new Finding(
          FindingCode.SAME_SIGNAL,
          true,
          "reference and return are sample for sample alike",
          "is one channel recorded twice, or one file named twice? A path through a file alone may"
              + " be exact: --allow-same-signal");

  private SameSignal() {}
}
