package dev.loopgauge.report.logged;

import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sheet;

/**
 * An entry that was moved to another part of its show's day.
 *
 * @param id the entry that stands now
 * @param corrects the one that it replaces
 */
public record RelabelDocument(
    String command, String outcome, String id, String corrects, When was, When when)
    implements Document {
  /** An entry that was before, during or after the show by mistake. */
  public static RelabelDocument of(String id, String corrects, When was, When when) {
    return new RelabelDocument("journal relabel", "relabelled", id, corrects, was, when);
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    sheet.line(
        "Entry %s counts as %s the show now, not %s; its new id is %s."
            .formatted(
                ListedRecord.shortened(corrects),
                when.label(),
                was.label(),
                ListedRecord.shortened(id)));
    return sheet.toString();
  }
}
