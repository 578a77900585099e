package dev.loopgauge.capture.file;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import java.util.Arrays;

/**
 * One channel of an open recording, read where it is asked for.
 *
 * @param file the recording, with at most as many frames as an {@code int} counts
 * @param number a channel that it has, counted from 1
 */
record WavChannel(WavFile file, int number) implements Samples {
  @Override
  public SampleRate rate() {
    return file.rate();
  }

  @Override
  public int length() {
    return (int) file.frames();
  }

  @Override
  public void copyTo(int from, double[] target, int at, int length) {
    int first = Math.max(from, 0);
    int end = (int) Math.min((long) from + length, length());
    Arrays.fill(target, at, at + length, 0);
    if (first < end) {
      try {
        file.copy(number, first, target, at + first - from, end - first);
      } catch (AudioFileException unreadable) {
        throw new UnreadableRecordingException(unreadable);
      }
    }
  }
}
