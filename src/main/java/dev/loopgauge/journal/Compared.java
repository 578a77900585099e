package dev.loopgauge.journal;

import dev.loopgauge.journal.PathPair.Standing;
import java.util.List;

/**
 * A path measured twice and what is known of the difference.
 *
 * @param pair the two measurements
 * @param changes what is not as it was, in the order of the aspects
 * @param causes what may have changed it, the surest first; empty unless it changed
 * @param notes what the reader must know of the two numbers, one sentence each
 */
public record Compared(
    PathPair pair, List<AspectChange> changes, List<Cause> causes, List<String> notes) {
  /** Copies the lists. */
  public Compared {
    changes = List.copyOf(changes);
    causes = List.copyOf(causes);
    notes = List.copyOf(notes);
  }

  /** What can be said of the two over all aspects. */
  public Standing standing() {
    return changes.isEmpty() ? pair.standing() : Standing.CHANGED;
  }
}
