package dev.loopgauge.journal;

import java.util.List;

/**
 * A path measured twice and what is known of the difference.
 *
 * @param pair the two measurements
 * @param causes what may have changed it, the surest first; empty unless it changed
 */
public record Compared(PathPair pair, List<Cause> causes) {
  /** Copies the list. */
  public Compared {
    causes = List.copyOf(causes);
  }
}
