package dev.loopgauge.signal;

import java.util.Arrays;

/**
 * A part of some samples, counted from its own start.
 *
 * @param whole what it is a part of
 * @param from the sample it starts with, 0 or more
 * @param length how many samples it has; those beyond the end of the whole are silence
 */
record SamplesSegment(Samples whole, int from, int length) implements Samples {
  /**
   * Checks the bounds.
   *
   * @throws IllegalArgumentException when one is negative
   */
  SamplesSegment {
    if (from < 0 || length < 0) {
      throw new IllegalArgumentException("no stretch has " + length + " samples from " + from);
    }
  }

  @Override
  public SampleRate rate() {
    return whole.rate();
  }

  @Override
  public void copyTo(int start, double[] target, int at, int count) {
    int before = Math.min(Math.max(-start, 0), count);
    int inside = Math.max(0, Math.min(length - start - before, count - before));
    Arrays.fill(target, at, at + count, 0);
    if (inside > 0) {
      whole.copyTo(from + start + before, target, at + before, inside);
    }
  }
}
