package dev.loopgauge.job.kept;

import dev.loopgauge.job.UsageException;
import dev.loopgauge.journal.Cause;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.History;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.report.logged.HistoryDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Follows a path over all shows of a journal.
 *
 * @param path the path
 * @param show the show, where only its entries count
 * @param rereading reads numbers of older editions anew; empty to take them as they were kept,
 *     where there is no time for that
 */
public record PathHistory(String path, Optional<String> show, Optional<Rereading> rereading) {
  private static final int MOST_EXPLAINED = 5;

  /** Documents take far longer to read than headings do: these are 50 shows, before and after. */
  private static final int MOST_READ = 100;

  /**
   * The history.
   *
   * @throws JournalException when the journal can't be read
   * @throws UsageException when it has nothing of the path, or nothing that can be trusted
   */
  public HistoryDocument in(Journal journal) throws JournalException {
    JournalQueries queries = new JournalQueries(journal);
    Placed found =
        queries.placed(
            new Selection(show, Optional.of(path), Optional.empty(), OptionalInt.empty()));
    if (found.standing().isEmpty()) {
      throw queries.unknown("path", path, Heading::path);
    }
    List<Heading> numbered =
        found.standing().stream().filter(heading -> heading.delay().isPresent()).toList();
    int from = Math.max(0, numbered.size() - MOST_READ);
    List<Entry> last = entries(journal, numbered.subList(from, numbered.size()));
    OneEdition edition =
        rereading.map(reader -> OneEdition.of(last, from == 0, reader)).orElse(OneEdition.AS_KEPT);
    History history =
        History.of(found.standing().stream().map(edition::of).toList())
            .orElseThrow(this::withoutNumber);
    List<String> notes = new ArrayList<>(found.allNotes());
    edition.note().ifPresent(notes::add);
    return HistoryDocument.of(
        path,
        history,
        causes(journal, history, edition),
        PathAspects.changed(last, edition),
        notes);
  }

  /** Damaged ones are left out. */
  private static List<Entry> entries(Journal journal, List<Heading> headings)
      throws JournalException {
    List<Entry> entries = new ArrayList<>();
    for (Heading heading : headings) {
      journal.entry(heading.id()).ifPresent(entries::add);
    }
    return entries;
  }

  private UsageException withoutNumber() {
    return new UsageException(
        "no entry of path '" + path + "' has a trustworthy number",
        "`loopgauge journal list --path` shows them");
  }

  private static List<List<Cause>> causes(Journal journal, History history, OneEdition edition)
      throws JournalException {
    List<List<Cause>> causes = new ArrayList<>();
    int steps = history.steps().size();
    for (History.Step step : history.steps().subList(Math.max(0, steps - MOST_EXPLAINED), steps)) {
      causes.add(KeptPairs.causes(journal, step.before(), step.after(), edition));
    }
    return causes;
  }
}
