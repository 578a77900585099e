package dev.loopgauge.report.logged;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import java.util.List;

/**
 * Results that were kept after they were printed.
 *
 * @param added the ids of the entries that are new
 * @param there the ids of those that were in the journal already
 * @param notes what the reader must know of them, one sentence each
 */
public record AddDocument(
    String command, String outcome, List<String> added, List<String> there, List<String> notes)
    implements Document {
  /** Copies the lists. */
  public AddDocument {
    added = List.copyOf(added);
    there = List.copyOf(there);
    notes = List.copyOf(notes);
  }

  /** Results of a file. */
  public static AddDocument of(List<String> added, List<String> there, List<String> notes) {
    return new AddDocument("journal add", "added", added, there, notes);
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    added.forEach(id -> sheet.line("Kept in the journal as " + ListedRecord.shortened(id) + "."));
    there.forEach(
        id -> sheet.line("In the journal already as " + ListedRecord.shortened(id) + "."));
    notes.forEach(note -> sheet.line(OneLine.line(note)));
    return sheet.toString();
  }
}
