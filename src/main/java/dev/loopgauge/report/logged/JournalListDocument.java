package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Corrections;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Inlined;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Table;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Entries of the journal, a line each.
 *
 * @param entries the entries in the order of time
 * @param all whether these are all that were asked for, rather than the last of them
 * @param notes what is to be known of their places
 */
public record JournalListDocument(
    String command, String outcome, List<LineRecord> entries, boolean all, List<String> notes)
    implements Document {
  private static final int SHOW_COLUMNS = 12;
  private static final int VERDICT_COLUMNS = 9;
  private static final int PATH_COLUMNS = 11;

  /**
   * An entry.
   *
   * @param correctedBy the entry that it no longer stands beside
   */
  public record LineRecord(@Inlined ListedRecord listed, Optional<String> correctedBy) {
    private String delay() {
      String delay = listed.delay().map(ShownDelay::bareSamples).orElse("none");
      return correctedBy.isPresent() ? "x " + delay : delay;
    }

    private EntryVerdict verdict() {
      return EntryVerdict.of(listed);
    }
  }

  /**
   * A list.
   *
   * @param headings the entries in the order of time
   * @param corrections which of them no longer stand
   * @param all whether these are all that were asked for, rather than the last of them
   * @param notes what is to be known of their places, one sentence each
   */
  public static JournalListDocument of(
      List<Heading> headings, Corrections corrections, boolean all, List<String> notes) {
    return new JournalListDocument(
        "journal list",
        "listed",
        headings.stream()
            .map(
                heading ->
                    new LineRecord(
                        ListedRecord.of(heading),
                        corrections.newer(heading.id()).map(UUID::toString)))
            .toList(),
        all,
        notes);
  }

  @Override
  public String text() {
    if (entries.isEmpty()) {
      return "No entries.\n  try  `loopgauge measure ... --journal --show NAME --when before`\n";
    }
    Sheet sheet = new Sheet();
    new Table<LineRecord>()
        .words("id", entry -> entry.listed().shortId())
        .words("measured at", entry -> Logs.listed(entry.listed().time()))
        .words("show", entry -> OneLine.brief(entry.listed().show(), SHOW_COLUMNS))
        .words("", entry -> entry.listed().when().label())
        .words("path", entry -> entry.listed().path(PATH_COLUMNS))
        .words("verdict", entry -> entry.verdict().brief(VERDICT_COLUMNS))
        .figures("samples", LineRecord::delay)
        .lines(entries)
        .forEach(line -> sheet.asIs(line.substring(2)));
    if (entries.stream().anyMatch(entry -> entry.verdict().isBadBesideTheDelay())) {
      sheet.line(
          EntryVerdict.NOT_GOOD
              + "  for another reason than delay: `loopgauge journal show ID` says why");
    }
    if (entries.stream().anyMatch(entry -> entry.correctedBy().isPresent())) {
      sheet.line("x  corrected by a later entry: `loopgauge journal show ID` names it");
    }
    notes.forEach(note -> sheet.row("note", OneLine.line(note)));
    if (!all) {
      sheet.line("The last " + entries.size() + "; --last N shows more, --show NAME one show.");
    }
    return sheet.toString();
  }
}
