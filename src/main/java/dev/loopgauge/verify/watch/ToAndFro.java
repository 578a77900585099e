package dev.loopgauge.verify.watch;

import dev.loopgauge.stats.ChangePoints;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * Whether a delay jumps to and fro between two values. A value that normal noise puts off its level
 * is one of 2,150 ({@link ChangePoints#LIMIT}); four of 24 that agree come by chance once in some
 * 10^9 windows.
 */
final class ToAndFro {
  private static final int REMEMBERED = 24;
  private static final int ENOUGH = 4;

  private record Seen(Value value, boolean near) {}

  private final double least;
  private final Deque<Seen> seen = new ArrayDeque<>();
  private boolean told;

  /** Nothing was seen yet. */
  ToAndFro(double least) {
    this.least = least;
  }

  /** Jumping starts or ends. */
  record Change(Phase phase, double other) {}

  /**
   * Takes the next value.
   *
   * @param near whether it keeps to the level
   */
  Optional<Change> next(Value value, boolean near, double usual) {
    if (!seen.isEmpty() && !value.isApartFrom(seen.getLast().value())) {
      return Optional.empty();
    }
    seen.addLast(new Seen(value, near));
    if (seen.size() > REMEMBERED) {
      seen.removeFirst();
    }
    if (told && isQuiet()) {
      told = false;
      return Optional.of(new Change(Phase.ENDS, usual));
    }
    if (!told && !near && isJumping(value)) {
      told = true;
      return Optional.of(new Change(Phase.STARTS, value.value()));
    }
    return Optional.empty();
  }

  private boolean isQuiet() {
    for (Seen one : seen) {
      if (!one.near()) {
        return false;
      }
    }
    return true;
  }

  /** Whether it was off by as much before, and each time came back. */
  private boolean isJumping(Value value) {
    int alike = 0;
    boolean back = false;
    for (Seen one : seen) {
      back |= one.near();
      boolean same =
          Math.abs(one.value().value() - value.value())
              <= Math.max(least, ChangePoints.LIMIT * value.noise());
      if (!one.near() && same && back) {
        alike++;
        back = false;
      }
    }
    return alike >= ENOUGH;
  }
}
