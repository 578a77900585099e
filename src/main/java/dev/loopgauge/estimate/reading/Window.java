package dev.loopgauge.estimate.reading;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;

/**
 * A window on a recording. Unlike a stretch, what lies before and after it is not silence but what
 * the recording holds there: in a return an arrival that leads its reference is found as well as
 * one that lags, and of a reference it is known what goes on beyond its edges.
 *
 * @param whole the recording
 * @param from the sample that the window starts with, negative too
 * @param length how many samples it has
 */
public record Window(Samples whole, int from, int length) implements Samples {
  /** A window on a recording, or on a window on one: what the recording holds stays readable. */
  public static Window on(Samples samples, int from, int length) {
    return samples instanceof Window window
        ? new Window(window.whole, window.from + from, length)
        : new Window(samples, from, length);
  }

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
