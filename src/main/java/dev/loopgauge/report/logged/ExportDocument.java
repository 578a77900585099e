package dev.loopgauge.report.logged;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import java.nio.file.Path;

/**
 * What was written of a journal.
 *
 * @param file where to
 * @param written how many entries
 * @param recordings how many of them name a recording
 * @param notWritten how many entries could not be read, and are not in the file
 */
public record ExportDocument(
    String command, String outcome, Path file, int written, int recordings, int notWritten)
    implements Document {
  /** An export of this many entries. */
  public static ExportDocument of(Path file, int written, int recordings, int notWritten) {
    return new ExportDocument("journal export", "exported", file, written, recordings, notWritten);
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    sheet.line(OneLine.line("%s written to %s.".formatted(entries(written), file)));
    if (notWritten > 0) {
      sheet.line("Not in it, for they could not be read: %s.".formatted(entries(notWritten)));
    }
    if (recordings > 0) {
      sheet.line(
          "%d of them name a recording beside the journal: copy these too.".formatted(recordings));
    }
    return sheet.toString();
  }

  private static String entries(int count) {
    return count == 1 ? "1 entry" : count + " entries";
  }
}
