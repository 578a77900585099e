package dev.loopgauge.estimate;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds runs of exact zeros in a return while its reference sounds on: lost sound, even within one
 * sweep. A filter can't be why, since the sound stands in full up to both edges of the run; within
 * a millisecond no filter falls so far.
 */
final class ZeroRuns {
  private static final double SECONDS = 0.001;

  /** How loud the return must be on either side against the copy that belongs there. */
  private static final double PRESENT = 0.5;

  /** How loud the reference must be within the run against either side of it. */
  private static final double SOUNDS_ON = 0.5;

  private final double[] reference;
  private final double[] ret;
  private final double gain;
  private final int side;

  private ZeroRuns(double[] reference, double[] ret, double gain, int side) {
    this.reference = reference;
    this.ret = ret;
    this.gain = Math.abs(gain);
    this.side = side;
  }

  /** The runs of at least 1 ms in a reading, in their order. */
  static List<LostSound.Gap> of(Reading reading, Copy copy) {
    double[] reference = new double[reading.reference().length()];
    double[] ret = new double[reference.length];
    int delay = (int) Math.rint(copy.lag());
    reading.reference().copyTo(0, reference, 0, reference.length);
    reading.ret().copyTo(delay, ret, 0, ret.length);
    ZeroRuns runs = new ZeroRuns(reference, ret, copy.gain(), reading.rate().samplesIn(SECONDS));
    return runs.find(reading.start() + delay);
  }

  private List<LostSound.Gap> find(int first) {
    List<LostSound.Gap> gaps = new ArrayList<>();
    int from = 0;
    for (int i = 0; i <= ret.length; i++) {
      if (i == ret.length || ret[i] != 0) {
        if (i - from >= side && isLost(from, i)) {
          gaps.add(new LostSound.Gap(first + from, i - from));
        }
        from = i + 1;
      }
    }
    return gaps;
  }

  private boolean isLost(int from, int to) {
    if (from < side || to + side > ret.length) {
      return false;
    }
    double within = rms(reference, from, to);
    return isWhole(from - side, from, within) && isWhole(to, to + side, within);
  }

  private boolean isWhole(int from, int to, double within) {
    double played = rms(reference, from, to);
    return within > SOUNDS_ON * played && rms(ret, from, to) > PRESENT * gain * within;
  }

  private static double rms(double[] values, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += values[i] * values[i];
    }
    return Math.sqrt(sum / (to - from));
  }
}
