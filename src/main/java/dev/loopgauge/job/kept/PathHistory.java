package dev.loopgauge.job.kept;

import dev.loopgauge.job.UsageException;
import dev.loopgauge.journal.Cause;
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
 */
public record PathHistory(String path, Optional<String> show) {
  private static final int MOST_EXPLAINED = 5;

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
    History history = History.of(found.standing()).orElseThrow(this::withoutNumber);
    return HistoryDocument.of(
        path,
        history,
        causes(journal, history),
        PathAspects.changed(journal, path, show),
        found.allNotes());
  }

  private UsageException withoutNumber() {
    return new UsageException(
        "no entry of path '" + path + "' has a trustworthy number",
        "`loopgauge journal list --path` shows them");
  }

  private static List<List<Cause>> causes(Journal journal, History history)
      throws JournalException {
    List<List<Cause>> causes = new ArrayList<>();
    int steps = history.steps().size();
    for (History.Step step : history.steps().subList(Math.max(0, steps - MOST_EXPLAINED), steps)) {
      causes.add(KeptPairs.causes(journal, step.before(), step.after()));
    }
    return causes;
  }
}
