package dev.loopgauge.job.kept;

import dev.loopgauge.chain.Nearest;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.journal.DamagedEntry;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.report.form.Json;
import java.io.IOException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Questions that several commands have for a journal. */
public record JournalQueries(Journal journal) {
  private static final int MOST_NAMED = 4;

  /** The entries that stand: those that no other corrects, in the places of what they correct. */
  public List<Heading> standing(Selection selection) throws JournalException {
    return placed(selection).standing();
  }

  /** The same, with what is to be known of their places. */
  public Placed placed(Selection selection) throws JournalException {
    return Placed.of(journal.headings(selection), journal.corrections());
  }

  /**
   * The entries of a show that stand.
   *
   * @throws UsageException when there is no such show
   */
  public List<Heading> show(String show) throws JournalException {
    return placedShow(show).standing();
  }

  /** The same, with what is to be known of their places. */
  public Placed placedShow(String show) throws JournalException {
    Placed found = placed(Selection.ofShow(show));
    if (found.standing().isEmpty()) {
      throw unknown("show", show, heading -> Optional.of(heading.show()));
    }
    return found;
  }

  /**
   * What to say of a name that no entry has.
   *
   * @param kind show or path
   * @param names where entries have such names
   * @throws JournalException when an entry is damaged, which may have had that name
   */
  public UsageException unknown(
      String kind, String found, Function<Heading, Optional<String>> names)
      throws JournalException {
    Set<String> known =
        journal.headings(Selection.ALL).stream()
            .flatMap(heading -> names.apply(heading).stream())
            .collect(Collectors.toCollection(LinkedHashSet::new));
    requireWhole();
    return new UsageException(
        "no " + kind + " '" + found + "' in the journal", Nearest.hint(found, known));
  }

  /**
   * The entry whose id begins so.
   *
   * @throws UsageException when there is none, or more than one
   */
  public Entry entry(String beginning) throws JournalException {
    String id = beginning.toLowerCase(Locale.ROOT);
    if (!id.matches("[0-9a-f-]+")) {
      throw new UsageException(
          "expected an id or its beginning, found '" + beginning + "'",
          "`loopgauge journal list` shows the ids");
    }
    List<Heading> found = journal.beginning(id);
    if (found.size() < 2) {
      checkDamage(id);
    }
    if (found.size() != 1) {
      String several =
          found.stream()
              .limit(MOST_NAMED)
              .map(heading -> heading.id().toString())
              .collect(Collectors.joining(", "));
      throw new UsageException(
          "expected one entry whose id begins with " + id + ", found " + found.size(),
          found.isEmpty() ? "`loopgauge journal list` shows the ids" : "type more: " + several);
    }
    Optional<Entry> entry = journal.entry(found.get(0).id());
    checkDamage(id);
    return entry.orElseThrow();
  }

  /**
   * Makes sure that nothing was left out of what was read so far: an older reading in the place of
   * a damaged one would be wrong.
   *
   * @throws JournalException when an entry is damaged
   */
  public void requireWhole() throws JournalException {
    checkDamage("");
  }

  private void checkDamage(String beginning) throws JournalException {
    for (DamagedEntry damaged : journal.damaged()) {
      if (damaged.id().startsWith(beginning)) {
        throw new JournalException(
            damaged.told(), "`loopgauge journal check` says what else is wrong; look for a copy");
      }
    }
  }

  /**
   * The document that an entry holds, by its keys.
   *
   * @throws JournalException when it can't be read
   */
  public static Map<String, Object> document(Entry entry) throws JournalException {
    try {
      return Json.read(entry.document());
    } catch (IOException e) {
      throw new JournalException(
          "entry " + entry.heading().id() + " holds no document that can be read",
          "`loopgauge journal check` says what else is wrong, `journal export` gives it as it is",
          e);
    }
  }
}
