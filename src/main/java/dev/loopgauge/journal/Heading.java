package dev.loopgauge.journal;

import dev.loopgauge.verify.verdict.Judgement;
import java.time.ZonedDateTime;
import java.util.Optional;
import java.util.UUID;

/**
 * What is needed to list an entry and to compare it with others.
 *
 * @param id the entry's own name, never used twice
 * @param at when it was measured, to the millisecond, in the zone of the computer that measured
 * @param show the show's name as the user typed it
 * @param when which part of the show's day
 * @param path the path's name, where one was given
 * @param outcome what the delay came to, by the name that documents use
 * @param standing how everything that was heard stands; empty where the document doesn't say, and
 *     for entries of versions that didn't keep it
 * @param delay the number, where it could be trusted
 * @param corrects the entry that this one replaces; the old one stays in the journal
 * @param foreignZone the name of the time zone where this computer doesn't know it: {@code at} has
 *     the offset there then
 */
public record Heading(
    UUID id,
    ZonedDateTime at,
    String show,
    When when,
    Optional<String> path,
    String outcome,
    Optional<Judgement> standing,
    Optional<LoggedDelay> delay,
    Optional<UUID> corrects,
    Optional<String> foreignZone) {
  private static final int SHORT_ID = 8;

  /**
   * Checks the name of the show and the instant.
   *
   * @throws IllegalArgumentException when the show's name is blank, the instant is finer than a
   *     millisecond, or the entry would correct itself
   */
  public Heading {
    if (show.isBlank()) {
      throw new IllegalArgumentException("a show must have a name, not '" + show + "'");
    }
    if (at.getNano() % 1_000_000 != 0) {
      throw new IllegalArgumentException("an entry is dated to the millisecond, not " + at);
    }
    if (corrects.filter(id::equals).isPresent()) {
      throw new IllegalArgumentException("entry " + id + " can't correct itself");
    }
  }

  /** In a time zone that this computer knows. */
  public Heading(
      UUID id,
      ZonedDateTime at,
      String show,
      When when,
      Optional<String> path,
      String outcome,
      Optional<Judgement> standing,
      Optional<LoggedDelay> delay,
      Optional<UUID> corrects) {
    this(id, at, show, when, path, outcome, standing, delay, corrects, Optional.empty());
  }

  /** The name of the time zone. */
  public String zone() {
    return foreignZone.orElseGet(() -> at.getZone().getId());
  }

  /** Enough of the entry's id to be typed. */
  public String shortId() {
    return shortened(id);
  }

  /** Enough of an id to be typed. */
  public static String shortened(UUID id) {
    return id.toString().substring(0, SHORT_ID);
  }
}
