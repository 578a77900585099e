package dev.loopgauge.report.logged;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sheet;

/**
 * What an import added to a journal.
 *
 * @param read how many entries were read
 * @param fresh how many of them were new
 */
public record ImportDocument(String command, String outcome, int read, int fresh)
    implements Document {
  /** An import of this many entries. */
  public static ImportDocument of(int read, int fresh) {
    return new ImportDocument("journal import", "imported", read, fresh);
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    sheet.line(
        "%d entries read, %d of them new, %d there already.".formatted(read, fresh, read - fresh));
    return sheet.toString();
  }
}
