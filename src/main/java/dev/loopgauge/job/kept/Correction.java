package dev.loopgauge.job.kept;

import dev.loopgauge.job.kept.NewEntries.Result;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The entry that a result replaces: of the same show, path and part of the day, and just one. */
record Correction(KeepChoice choice, Journal journal) {
  private static final String HINT =
      "name the same show, path and part of the day, or keep it without --correct";

  /**
   * The id of that entry; empty where none is to be replaced.
   *
   * @throws JournalException when it is of something else, or can't be read
   * @throws dev.loopgauge.job.UsageException when no entry's id begins so, or more than one does
   */
  Optional<UUID> of(List<Result> results) throws JournalException {
    if (choice.corrected().isEmpty()) {
      return Optional.empty();
    }
    if (results.size() != 1) {
      throw new JournalException(
          "one entry can't be corrected by %d channels".formatted(results.size()),
          "measure the one channel that it is of");
    }
    Heading old = new JournalQueries(journal).entry(choice.corrected().get()).heading();
    check(old, "show", old.show(), choice.show().orElseThrow());
    check(old, "part of the day", old.when().label(), choice.when().orElseThrow().label());
    check(old, "path", path(old.path()), path(results.get(0).path()));
    return Optional.of(old.id());
  }

  private static String path(Optional<String> path) {
    return path.orElse("");
  }

  private static void check(Heading old, String what, String there, String here)
      throws JournalException {
    if (!there.equals(here)) {
      throw new JournalException(
          "entry %s has the %s '%s', and its correction '%s'"
              .formatted(old.shortId(), what, there, here),
          HINT);
    }
  }
}
