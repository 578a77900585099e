package dev.loopgauge.estimate;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;

/**
 * A window on a return. Unlike a stretch, what lies before and after it is not silence but what the
 * recording holds there, so that a copy that leads its reference is found as well as one that lags.
 *
 * @param whole the recording
 * @param from the sample that the window starts with, negative too
 * @param length how many samples it has
 */
record Window(Samples whole, int from, int length) implements Samples {
  @Override
  public SampleRate rate() {
    return whole.rate();
  }

  @Override
  public void copyTo(int start, double[] target, int at, int count) {
    whole.copyTo(from + start, target, at, count);
  }

  /** The sample of the window before which the recording has not started. */
  int recordedFrom() {
    return -from;
  }

  /** The sample of the window at which the recording ends. */
  int recordedTo() {
    return whole.length() - from;
  }
}
