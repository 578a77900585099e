package dev.loopgauge.capture.jack;

/**
 * How far one side of a take has got, and whether blocks were left out or came twice. Written by
 * one callback; the others read {@link #frames} first, which makes the rest visible to them.
 */
final class TakeProgress {
  private final int end;
  private int strayFrames;
  private int firstStray;
  private volatile int frames;

  TakeProgress(int end) {
    this.end = end;
  }

  /** Notes a block that began at frame {@code from} of the take and had {@code length} samples. */
  void block(int from, int length) {
    int first = clip(from);
    int expected = frames;
    if (first != expected) {
      if (strayFrames == 0) {
        firstStray = Math.min(first, expected);
      }
      strayFrames += Math.abs(first - expected);
    }
    frames = clip(from + length);
  }

  private int clip(int frame) {
    return Math.max(0, Math.min(frame, end));
  }

  /** The frames done, counted from the start of the take. */
  int frames() {
    return frames;
  }

  /** How many frames were left out or came twice. */
  int strayFrames() {
    return strayFrames;
  }

  /** The first of them; 0 when there is none. */
  int firstStray() {
    return firstStray;
  }
}
