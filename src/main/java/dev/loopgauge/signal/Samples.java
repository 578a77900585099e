package dev.loopgauge.signal;

/**
 * One channel of sound to read from in any order, held in memory or not. {@link Signal} is one; a
 * recording on disk is another, so that an hour of sound needs no more memory than a minute.
 *
 * <p>To fake it in a test, use a {@code Signal}.
 */
public interface Samples {
  /** The rate of the samples. */
  SampleRate rate();

  /** How many samples there are. */
  int length();

  /**
   * Copies {@code length} samples from {@code from} on into {@code target} at {@code at}. What lies
   * before the first or after the last sample counts as silence.
   */
  void copyTo(int from, double[] target, int at, int length);

  /**
   * The samples from {@code from} (inclusive) to {@code to} (exclusive), in memory; outside is
   * silence.
   *
   * @throws IllegalArgumentException when it ends before it starts, or is longer than an array
   */
  default Signal slice(int from, int to) {
    long length = (long) to - from;
    if (length < 0 || length > Integer.MAX_VALUE) {
      throw new IllegalArgumentException("a slice can't run from " + from + " to " + to);
    }
    double[] part = new double[(int) length];
    copyTo(from, part, 0, part.length);
    return Signal.taking(rate(), part);
  }

  /**
   * The part that starts at {@code from} and has {@code length} samples, read when it is asked for.
   *
   * @throws IllegalArgumentException when either is negative
   */
  default Samples stretch(int from, int length) {
    return new SamplesSegment(this, from, length);
  }
}
