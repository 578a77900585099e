package dev.loopgauge.job.kept;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Ending;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.report.logged.KeptDocument;
import dev.loopgauge.report.logged.RereadDocument;
import dev.loopgauge.report.logged.RereadDocument.RereadRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads kept recordings by the edition of what the delay means that counts now. The journal stays
 * as it is.
 *
 * @param show only this show's entries, where one is named
 * @param rereading reads them
 */
public record RereadJob(Optional<String> show, Rereading rereading) {
  /**
   * Does it.
   *
   * @throws JournalException when the journal can't be read
   * @throws dev.loopgauge.job.UsageException when there is no such show
   */
  public Answer in(Journal journal) throws JournalException {
    JournalQueries queries = new JournalQueries(journal);
    List<Heading> headings =
        show.isPresent() ? queries.show(show.get()) : queries.standing(Selection.ALL);
    int current = 0;
    List<RereadRecord> older = new ArrayList<>();
    for (Heading heading : headings) {
      Optional<Entry> entry = journal.entry(heading.id());
      if (heading.delay().isEmpty() || entry.isEmpty()) {
        continue;
      }
      Optional<RereadRecord> reread = reread(entry.get());
      reread.ifPresent(older::add);
      current += reread.isEmpty() ? 1 : 0;
    }
    RereadDocument document = RereadDocument.of(Measurement.DEFINITION, current, older);
    return new Answer(ending(document), document);
  }

  private Optional<RereadRecord> reread(Entry entry) {
    Rereading.Result result = rereading.of(entry);
    if (result instanceof Rereading.Current) {
      return Optional.empty();
    }
    Heading kept = entry.heading();
    String edition = KeptDocument.of(entry).edition().orElseThrow();
    return Optional.of(
        result instanceof Rereading.Read read
            ? RereadRecord.read(kept, edition, read.heading().delay().orElseThrow())
            : RereadRecord.unread(kept, edition, ((Rereading.Unread) result).why()));
  }

  private static Ending ending(RereadDocument document) {
    if (document.moved() > 0) {
      return Ending.OUTSIDE;
    }
    return document.unread() > 0 ? Ending.NOT_TRUSTWORTHY : Ending.GOOD;
  }
}
