package dev.loopgauge.estimate.reading;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import java.util.Arrays;

/**
 * The last seconds of one channel, in memory that doesn't grow. One thread may add while another
 * reads: what is read is whole as long as {@link #from} has not passed it by then.
 */
public final class RecentSound {
  private final SampleRate rate;
  private final float[] ring;
  private volatile long to;

  /**
   * Nothing was heard yet.
   *
   * @param capacity how many samples it holds, 1 or more
   */
  public RecentSound(SampleRate rate, int capacity) {
    this.rate = rate;
    this.ring = new float[capacity];
  }

  /** The frame that comes next; all before it were heard. */
  public long to() {
    return to;
  }

  /** The first frame that is still there. */
  public long from() {
    return Math.max(0, to - ring.length);
  }

  /** Adds what was heard next. */
  public void add(float[] block, int length) {
    long at = to;
    for (int i = 0; i < length; i++) {
      ring[place(at + i)] = block[i];
    }
    to = at + length;
  }

  /** Adds silence in place of frames that were lost. */
  public void addSilence(long frames) {
    long at = to;
    for (long i = 0; i < Math.min(frames, ring.length); i++) {
      ring[place(at + frames - 1 - i)] = 0;
    }
    to = at + frames;
  }

  private int place(long frame) {
    return (int) (frame % ring.length);
  }

  /**
   * A view whose first sample is a frame, and whose last one is the last that was heard.
   *
   * @param first the frame, at most {@link #to}; what is not there any more counts as silence
   */
  public Samples since(long first) {
    return new View(first, (int) (to - first));
  }

  private final class View implements Samples {
    private final long first;
    private final int length;

    View(long first, int length) {
      this.first = first;
      this.length = length;
    }

    @Override
    public SampleRate rate() {
      return rate;
    }

    @Override
    public int length() {
      return length;
    }

    @Override
    public void copyTo(int start, double[] target, int at, int count) {
      long from = Math.max(start, Math.max(0, from() - first));
      long end = Math.min((long) start + count, length);
      Arrays.fill(target, at, at + count, 0);
      int place = place(Math.max(0, first + from));
      for (long sample = from; sample < end; sample++) {
        target[(int) (at + sample - start)] = ring[place];
        place = place + 1 == ring.length ? 0 : place + 1;
      }
    }
  }
}
