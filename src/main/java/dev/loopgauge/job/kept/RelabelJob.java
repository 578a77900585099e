package dev.loopgauge.job.kept;

import dev.loopgauge.job.Answer;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.logged.RelabelDocument;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Moves an entry to another part of its show's day: the old one stays, a new one corrects it.
 *
 * @param id the entry's id, or enough of its beginning
 * @param when where it belongs
 */
public record RelabelJob(String id, When when) {
  /**
   * Does it.
   *
   * @throws JournalException when the journal can't be read or written, or the entry was corrected
   *     already
   * @throws UsageException when there is no such entry, or it belongs there already
   */
  public Answer in(Journal journal) throws JournalException {
    Entry old = new JournalQueries(journal).entry(id);
    Heading heading = old.heading();
    Optional<UUID> newer = journal.corrections().newer(heading.id());
    if (newer.isPresent()) {
      throw new JournalException(
          "entry %s was corrected already, by entry %s".formatted(heading.id(), newer.get()),
          "`loopgauge journal show` shows that one; relabel it instead");
    }
    if (heading.when() == when) {
      throw new UsageException(
          "entry %s counts as %s the show already".formatted(heading.shortId(), when.label()),
          "name another part of the day");
    }
    Entry moved = moved(old);
    journal.append(List.of(moved));
    return Answer.good(
        RelabelDocument.of(
            moved.heading().id().toString(), heading.id().toString(), heading.when(), when));
  }

  private Entry moved(Entry old) {
    Heading h = old.heading();
    Heading moved =
        new Heading(
            UUID.randomUUID(),
            h.at(),
            h.show(),
            when,
            h.path(),
            h.outcome(),
            h.standing(),
            h.delay(),
            Optional.of(h.id()),
            h.foreignZone());
    return new Entry(
        moved,
        old.note(),
        old.setup(),
        old.document(),
        old.chain(),
        old.card(),
        old.capture(),
        old.toolVersion());
  }
}
