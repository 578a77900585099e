package dev.loopgauge.estimate;

import java.util.ArrayDeque;
import java.util.Deque;

/** Frames that were lost while sound was recorded, as long as they may matter. */
final class LostSegments {
  private record Segment(long from, long to) {}

  private final long held;
  private final Deque<Segment> segments = new ArrayDeque<>();

  /**
   * None yet.
   *
   * @param held how many frames back windows are looked at
   */
  LostSegments(long held) {
    this.held = held;
  }

  /** Frames were lost from one on. */
  synchronized void add(long from, long frames) {
    while (!segments.isEmpty() && segments.peekFirst().to() < from - held) {
      segments.removeFirst();
    }
    segments.addLast(new Segment(from, from + frames));
  }

  /** Whether any lie between two frames. */
  synchronized boolean touch(long from, long to) {
    for (Segment segment : segments) {
      if (segment.from() < to && segment.to() > from) {
        return true;
      }
    }
    return false;
  }
}
