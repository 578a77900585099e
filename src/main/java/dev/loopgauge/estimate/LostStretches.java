package dev.loopgauge.estimate;

import java.util.ArrayDeque;
import java.util.Deque;

/** Frames that were lost while sound was recorded, as long as they may matter. */
final class LostStretches {
  private record Stretch(long from, long to) {}

  private final long held;
  private final Deque<Stretch> stretches = new ArrayDeque<>();

  /**
   * None yet.
   *
   * @param held how many frames back windows are looked at
   */
  LostStretches(long held) {
    this.held = held;
  }

  /** Frames were lost from one on. */
  synchronized void add(long from, long frames) {
    while (!stretches.isEmpty() && stretches.peekFirst().to() < from - held) {
      stretches.removeFirst();
    }
    stretches.addLast(new Stretch(from, from + frames));
  }

  /** Whether any lie between two frames. */
  synchronized boolean touch(long from, long to) {
    for (Stretch stretch : stretches) {
      if (stretch.from() < to && stretch.to() > from) {
        return true;
      }
    }
    return false;
  }
}
