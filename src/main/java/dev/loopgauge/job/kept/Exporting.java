package dev.loopgauge.job.kept;

import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Person;
import dev.loopgauge.journal.DamagedEntry;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.report.exchange.EntryCheck;
import dev.loopgauge.report.exchange.EntryWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** Writes all of a selection that is whole, and remembers what isn't. */
public final class Exporting {
  private final Journal journal;
  private final Selection selection;
  private final List<String> unfit = new ArrayList<>();
  private int written;
  private int recordings;

  /** An export that is yet to be written. */
  public Exporting(Journal journal, Selection selection) {
    this.journal = journal;
    this.selection = selection;
  }

  /**
   * Writes it, with its last line.
   *
   * @param seen gets each entry that was written
   * @throws JournalException when the journal can't be read
   * @throws IOException when the export can't be written
   */
  public void write(EntryWriter writer, Consumer<KeptEntry> seen)
      throws JournalException, IOException {
    try {
      journal.each(selection, kept -> write(writer, kept, seen));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    writer.end(leftOut().size());
  }

  private void write(EntryWriter writer, KeptEntry kept, Consumer<KeptEntry> seen) {
    Entry entry = kept.entry();
    Optional<String> wrong = EntryCheck.wrong(entry);
    if (wrong.isPresent()) {
      unfit.add("entry " + entry.heading().id() + " holds " + wrong.get());
      return;
    }
    try {
      writer.write(kept);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    written++;
    recordings += entry.capture().isPresent() ? 1 : 0;
    seen.accept(kept);
  }

  /** What could not be exported, one sentence each. */
  public List<String> leftOut() {
    return Stream.concat(journal.damaged().stream().map(DamagedEntry::told), unfit.stream())
        .toList();
  }

  /** The answer, which tells of what was left out. */
  public Answer whole(Answer answer, Person person) {
    return SoundPart.of(leftOut(), answer, person);
  }

  /** How many entries were written. */
  public int written() {
    return written;
  }

  /** How many of them name a recording. */
  public int recordings() {
    return recordings;
  }
}
