package dev.loopgauge.verify.watch;

import dev.loopgauge.verify.watch.Steady.Move;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import java.util.ArrayDeque;
import java.util.Deque;

/** The moves of a level that have not been undone. */
final class Moves {
  private final double least;
  private final Deque<Double> before = new ArrayDeque<>();

  /**
   * None yet.
   *
   * @param least what lies no further apart is one level
   */
  Moves(double least) {
    this.least = least;
  }

  /** A move back to where an earlier one came from ends that one and those after it. */
  Phase phase(Move move) {
    double same = Math.max(least, move.uncertainty());
    boolean back = false;
    for (double earlier : before) {
      back |= Math.abs(move.to() - earlier) <= same;
    }
    if (!back) {
      before.push(move.from());
      return Phase.STARTS;
    }
    double undone = before.pop();
    while (Math.abs(move.to() - undone) > same) {
      undone = before.pop();
    }
    return Phase.ENDS;
  }

  /** Whether the level is another one than at first. */
  boolean areOpen() {
    return !before.isEmpty();
  }

  /** Where it was before says nothing any more. */
  void forget() {
    before.clear();
  }
}
