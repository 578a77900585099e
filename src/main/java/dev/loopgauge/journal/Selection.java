package dev.loopgauge.journal;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * Which entries are wanted; what is empty chooses all.
 *
 * @param show only those of this show, its name exactly as stored
 * @param path only those of this path
 * @param when only those of this part of the day
 * @param latest how many entries, the last ones measured, 1 or more
 */
public record Selection(
    Optional<String> show, Optional<String> path, Optional<When> when, OptionalInt latest) {
  /** Every entry. */
  public static final Selection ALL =
      new Selection(Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.empty());

  /**
   * Checks the number.
   *
   * @throws IllegalArgumentException when fewer than one entry is asked for
   */
  public Selection {
    if (latest.isPresent() && latest.getAsInt() < 1) {
      throw new IllegalArgumentException("expected 1 entry or more, not " + latest.getAsInt());
    }
  }

  /** Every entry of a show. */
  public static Selection ofShow(String show) {
    return new Selection(
        Optional.of(show), Optional.empty(), Optional.empty(), OptionalInt.empty());
  }

  /** Every entry of a path. */
  public static Selection ofPath(String path) {
    return new Selection(
        Optional.empty(), Optional.of(path), Optional.empty(), OptionalInt.empty());
  }
}
