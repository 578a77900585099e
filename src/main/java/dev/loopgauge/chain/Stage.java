package dev.loopgauge.chain;

import java.util.Optional;

/**
 * One thing that adds delay.
 *
 * @param name its name in the chain file
 * @param delay what it is said to add
 * @param tolerance how far off that may be, either way
 * @param note where the number comes from, in the writer's words
 * @param reportedBy who reports this delay, for instance the host
 * @param compensated whether the other paths are delayed to match
 * @param host the computer whose block size and sample rate count for it, where it is not the rig's
 */
public record Stage(
    String name,
    Delay delay,
    Delay tolerance,
    Optional<String> note,
    Optional<String> reportedBy,
    Compensation compensated,
    Optional<String> host) {
  /** The same stage by another name. */
  public Stage renamed(String newName) {
    return new Stage(newName, delay, tolerance, note, reportedBy, compensated, host);
  }

  /** The same stage with another delay, to within another tolerance. */
  public Stage delayedBy(Delay newDelay, Delay newTolerance) {
    return new Stage(name, newDelay, newTolerance, note, reportedBy, compensated, host);
  }
}
