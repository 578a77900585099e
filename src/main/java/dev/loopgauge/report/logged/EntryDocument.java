package dev.loopgauge.report.logged;

import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Unbinder;
import dev.loopgauge.report.form.VerdictRecord;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * One entry of the journal, all of it.
 *
 * @param entry the entry
 * @param document its document as it was printed, read
 * @param notes what is to be known of its corrections
 */
public record EntryDocument(
    String command,
    String outcome,
    EntryRecord entry,
    Map<String, Object> document,
    List<String> notes)
    implements Document {
  /** What is told of the document. */
  private record Told(List<FindingRecord> findings, Optional<VerdictRecord> verdict) {
    /** Documents told the verdict before the journal kept how it stands. */
    private EntryVerdict of(ListedRecord listed) {
      return new EntryVerdict(
          listed.outcome(), listed.standing().or(() -> verdict.flatMap(VerdictRecord::standing)));
    }
  }

  /**
   * An entry.
   *
   * @param measured its document as it was printed, read
   * @param correctedBy the entry that it no longer stands beside, where there is one
   * @param notes what is to be known of its corrections, one sentence each
   */
  public static EntryDocument of(
      Entry entry, Map<String, Object> measured, Optional<UUID> correctedBy, List<String> notes) {
    return new EntryDocument(
        "journal show", "shown", EntryRecord.of(entry, correctedBy), measured, notes);
  }

  @Override
  public String text() {
    ListedRecord listed = entry.listed();
    Told told = Unbinder.read(Told.class, document).orElseThrow();
    EntryVerdict verdict = told.of(listed);
    Sheet sheet = new Sheet();
    sheet.line(
        "%s, %s, %s: %s"
            .formatted(
                OneLine.line(listed.show()),
                listed.when().label(),
                OneLine.line(listed.path().orElse("no path named")),
                OneLine.line(verdict.line(told.verdict()))));
    sheet.row(
        "delay",
        listed
            .delay()
            .map(delay -> samples(delay) + " samples, " + delay.bareMs() + " ms")
            .orElse(Logs.NO_NUMBER));
    verdict.tell(sheet, told.verdict());
    told.findings().forEach(finding -> tell(sheet, finding));
    sheet.row("measured at", Logs.exact(listed.time()));
    entry.tell(sheet);
    notes.forEach(note -> sheet.row("note", OneLine.line(note)));
    return sheet.toString();
  }

  private String samples(ShownDelay delay) {
    Optional<String> method = KeptDocument.of(document).method();
    return method.equals(Optional.of(Method.UNCALIBRATED.label()))
        ? delay.bareSamples()
        : delay.inSamples();
  }

  private static void tell(Sheet sheet, FindingRecord finding) {
    finding.text().ifPresent(text -> sheet.row("finding", OneLine.line(text)));
    finding.hint().ifPresent(hint -> sheet.row("  try", OneLine.line(hint)));
  }
}
