package dev.loopgauge.report.logged;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import java.util.List;

/**
 * What an import added to a journal.
 *
 * @param read how many entries were read
 * @param fresh how many of them were new
 * @param notes what the reader must know of the files, one sentence each
 */
public record ImportDocument(
    String command, String outcome, int read, int fresh, List<String> notes) implements Document {
  /** Copies the list. */
  public ImportDocument {
    notes = List.copyOf(notes);
  }

  /** An import of this many entries. */
  public static ImportDocument of(int read, int fresh, List<String> notes) {
    return new ImportDocument("journal import", "imported", read, fresh, notes);
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    sheet.line(
        "%d entries read, %d of them new, %d there already.".formatted(read, fresh, read - fresh));
    notes.forEach(note -> sheet.line(OneLine.line(note)));
    return sheet.toString();
  }
}
