package dev.loopgauge.job.kept;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.report.exchange.EntryCheck;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What entries hold that are as they were stored: documents, and recordings beside the journal.
 *
 * @param last the last entry that can be read
 * @param wrong what is wrong, one sentence each
 * @param missing how many recordings are not in the folder
 */
public record KeptContents(Optional<Heading> last, List<String> wrong, int missing) {
  /**
   * Reads all of them.
   *
   * @param recordings the folder of the recordings
   * @throws JournalException when the journal can't be read
   */
  public static KeptContents of(Journal journal, Path recordings) throws JournalException {
    Reading reading = new Reading(recordings);
    journal.each(Selection.ALL, kept -> reading.add(kept.entry()));
    reading.wrong.addAll(reading.recordings.damaged());
    return new KeptContents(reading.last, List.copyOf(reading.wrong), reading.recordings.missing());
  }

  /** One pass over the journal. */
  private static final class Reading {
    private final KeptRecordings recordings;
    private final List<String> wrong = new ArrayList<>();
    private Optional<Heading> last = Optional.empty();

    Reading(Path folder) {
      recordings = new KeptRecordings(folder);
    }

    void add(Entry entry) {
      last = Optional.of(entry.heading());
      EntryCheck.wrong(entry)
          .map(what -> "entry " + entry.heading().id() + " holds " + what)
          .ifPresent(wrong::add);
      recordings.check(entry);
    }
  }
}
