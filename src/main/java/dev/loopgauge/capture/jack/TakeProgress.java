package dev.loopgauge.capture.jack;

/**
 * How far one side of a take has got, and whether blocks were left out or came twice. Written by
 * one callback; the others read {@link #frames} first, which makes the rest visible to them.
 */
final class TakeProgress {
  /** Enough for a take that has to be played again anyway. */
  private static final int MOST = 256;

  private final int end;
  private final int[] from = new int[MOST];
  private final int[] length = new int[MOST];
  private int strays;
  private volatile int frames;

  TakeProgress(int end) {
    this.end = end;
  }

  /** Notes a block that began at frame {@code from} of the take and had {@code length} samples. */
  void block(int from, int length) {
    int first = clip(from);
    int expected = frames;
    if (first != expected) {
      stray(Math.min(first, expected), Math.abs(first - expected));
    }
    frames = clip(from + length);
  }

  /** The last place takes what no longer has one of its own. */
  private void stray(int at, int count) {
    int place = Math.min(strays, MOST - 1);
    from[place] = strays < MOST ? at : from[place];
    length[place] = strays < MOST ? count : Math.max(at + count - from[place], length[place]);
    strays = place + 1;
  }

  private int clip(int frame) {
    return Math.max(0, Math.min(frame, end));
  }

  /** The frames done, counted from the start of the take. */
  int frames() {
    return frames;
  }

  /** How many times frames were left out or came twice. */
  int strays() {
    return strays;
  }

  /** The first frame that was left out or came twice; {@code index} from 0. */
  int strayFrom(int index) {
    return from[index];
  }

  /** How many frames were; {@code index} from 0. */
  int strayLength(int index) {
    return length[index];
  }
}
