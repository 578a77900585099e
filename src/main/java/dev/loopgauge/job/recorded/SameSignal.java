package dev.loopgauge.job.recorded;

import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.signal.Samples;
import java.util.Arrays;

/** Tells whether two channels are one: two recordings of one sound always differ in their noise. */
final class SameSignal {
  /** Says so. */
  static final Finding FINDING =
      new Finding(
          FindingCode.SAME_SIGNAL,
          true,
          "reference and return are sample for sample alike",
          "is one channel recorded twice, or one file named twice? A path through a file alone may"
              + " be exact: --allow-same-signal");

  private static final int CHUNK = 1 << 14;

  private SameSignal() {}

  /** Whether both have the same length and the same samples, and are not silent. */
  static boolean of(Samples one, Samples other) {
    if (one.length() != other.length()) {
      return false;
    }
    double[] ofOne = new double[CHUNK];
    double[] ofOther = new double[CHUNK];
    boolean silent = true;
    for (int from = 0; from < one.length(); from += CHUNK) {
      one.copyTo(from, ofOne, 0, CHUNK);
      other.copyTo(from, ofOther, 0, CHUNK);
      if (!Arrays.equals(ofOne, ofOther)) {
        return false;
      }
      silent = silent && Arrays.stream(ofOne).allMatch(sample -> sample == 0);
    }
    return !silent;
  }
}
