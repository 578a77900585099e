package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/**
 * What is wrong with a journal.
 *
 * @param entries how many entries it has, damaged ones included
 * @param lastAt when the last one was measured, as ISO 8601 writes it; null where there is none
 * @param wrong what is, one sentence each
 * @param missingRecordings how many recordings are not in the folder beside it
 */
public record CheckDocument(
    String command,
    String outcome,
    int entries,
    Optional<String> lastAt,
    List<String> wrong,
    int missingRecordings)
    implements Document {
  /** Copies the list. */
  public CheckDocument {
    wrong = List.copyOf(wrong);
    lastAt.ifPresent(OffsetDateTime::parse);
  }

  /**
   * A check.
   *
   * @param last the last entry, where there is one
   */
  public static CheckDocument of(
      long entries, Optional<Heading> last, List<String> wrong, int missingRecordings) {
    return new CheckDocument(
        "journal check",
        wrong.isEmpty() ? "clean" : "damaged",
        Math.toIntExact(entries),
        last.map(heading -> heading.at().toOffsetDateTime().toString()),
        wrong,
        missingRecordings);
  }

  private String headline() {
    if (!wrong.isEmpty()) {
      return "NOT CLEAN: " + wrong.size() + " things are wrong; keep a copy as it is.";
    }
    return entries == 0
        ? "CLEAN: there are no entries yet."
        : "CLEAN: every entry is whole and as it was stored.";
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    sheet.line(headline());
    sheet.row("entries", String.valueOf(entries));
    lastAt.ifPresent(
        at -> sheet.row("last one", Logs.brief(OffsetDateTime.parse(at).toZonedDateTime())));
    wrong.forEach(line -> sheet.line(OneLine.line(line)));
    if (missingRecordings > 0) {
      sheet.line(missingRecordings + " kept recordings are not in the folder beside this journal.");
    }
    return sheet.toString();
  }
}
