package dev.loopgauge.report.logged;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import java.util.List;

/**
 * What is wrong with a journal.
 *
 * @param wrong what is, one sentence each
 * @param missingRecordings how many recordings are not in the folder beside it
 */
public record CheckDocument(
    String command, String outcome, List<String> wrong, int missingRecordings) implements Document {
  /** Copies the list. */
  public CheckDocument {
    wrong = List.copyOf(wrong);
  }

  /** A check that found so much wrong. */
  public static CheckDocument of(List<String> wrong, int missingRecordings) {
    return new CheckDocument(
        "journal check", wrong.isEmpty() ? "clean" : "damaged", wrong, missingRecordings);
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    sheet.line(
        wrong.isEmpty()
            ? "CLEAN: every entry is whole and as it was stored."
            : "NOT CLEAN: " + wrong.size() + " things are wrong; keep a copy as it is.");
    wrong.forEach(line -> sheet.line(OneLine.line(line)));
    if (missingRecordings > 0) {
      sheet.line(missingRecordings + " kept recordings are not in the folder beside this journal.");
    }
    return sheet.toString();
  }
}
