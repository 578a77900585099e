package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds runs of exact zeros in a return while its reference sounds on: lost sound, even within one
 * sweep. A filter can't be why, since the sound stands in full up to both edges of the run; within
 * a millisecond no filter falls so far.
 */
public final class ZeroRuns {
  private static final double SECONDS = 0.001;

  /** How loud the return must be on either side against the arrival that belongs there. */
  private static final double PRESENT = 0.5;

  /** How loud the reference must be within the run against either side of it. */
  private static final double SOUNDS_ON = 0.5;

  private static final int CHUNK = 1 << 12;

  private final Reading reading;
  private final int delay;
  private final double gain;
  private final int side;
  private final List<LostSound.Gap> gaps = new ArrayList<>();

  private ZeroRuns(Reading reading, FittedArrival arrival) {
    this.reading = reading;
    this.delay = (int) Math.rint(arrival.lag());
    this.gain = Math.abs(arrival.gain());
    this.side = reading.rate().samplesIn(SECONDS);
  }

  /** The runs of at least 1 ms in a reading, in their order. */
  public static List<LostSound.Gap> of(Reading reading, FittedArrival arrival) {
    ZeroRuns runs = new ZeroRuns(reading, arrival);
    runs.find();
    return runs.gaps;
  }

  private void find() {
    int length = reading.reference().length();
    double[] chunk = new double[Math.min(CHUNK, length)];
    int run = 0;
    for (int from = 0; from < length; from += chunk.length) {
      reading.ret().copyTo(delay + from, chunk, 0, chunk.length);
      for (int i = 0; i < chunk.length; i++) {
        if (chunk[i] == 0) {
          run++;
        } else if (run > 0) {
          endRun(from + i - run, from + i);
          run = 0;
        }
      }
    }
  }

  private void endRun(int from, int to) {
    if (to - from >= side && isLost(from, to)) {
      gaps.add(new LostSound.Gap(reading.start() + delay + from, to - from));
    }
  }

  private boolean isLost(int from, int to) {
    if (from < side || to + side > reading.reference().length()) {
      return false;
    }
    double within = reading.reference().slice(from, to).rms();
    return isWhole(from - side, from, within) && isWhole(to, to + side, within);
  }

  private boolean isWhole(int from, int to, double within) {
    double played = reading.reference().slice(from, to).rms();
    double heard = reading.ret().slice(delay + from, delay + to).rms();
    return within > SOUNDS_ON * played && heard > PRESENT * gain * within;
  }
}
