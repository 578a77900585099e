package dev.loopgauge.report.html;

import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Sheet;
import java.util.List;

/** The report as text: the verdict over all, then path by path. */
final class ReportText {
  private static final int LONGEST_NAME = 60;
  private static final int LONGEST = 400;

  private ReportText() {}

  static String of(ReportDocument report) {
    List<PathStory> paths =
        PathStory.of(report.readings(), report.past(), new Budgets(report.readings()));
    FirstWords opening = FirstWords.of(paths, report.readings());
    Sheet sheet = new Sheet();
    sheet.line(plain(opening.lead(), LONGEST));
    sheet.line(plain(report.title(), LONGEST_NAME));
    paths.forEach(path -> path(sheet, path));
    sheet.gap();
    opening.lines().stream()
        .filter(line -> paths.stream().noneMatch(path -> path.name().equals(line.name())))
        .forEach(line -> sheet.row(plain(line.name(), LONGEST_NAME), plain(line.text(), LONGEST)));
    opening.others().forEach(line -> sheet.line(plain(line, LONGEST)));
    return sheet.toString();
  }

  private static void path(Sheet sheet, PathStory path) {
    sheet.gap();
    sheet.line(plain(path.name(), LONGEST_NAME));
    sheet.row("verdict", plain(Standings.word(path.standing()) + ", " + path.sentence(), LONGEST));
    path.latest()
        .delay()
        .ifPresent(
            delay ->
                sheet.row("measured", delay.inSamples() + " samples   " + delay.inMs() + " ms"));
    path.shift().ifPresent(shift -> shift(sheet, shift));
    path.latest().findings().forEach(finding -> finding(sheet, finding));
  }

  private static void shift(Sheet sheet, BeforeAndAfter shift) {
    String changed = shift.changed() ? "CHANGED" : "the same";
    sheet.row(
        "after",
        shift.inSamples().map(by -> by + " samples against before, ").orElse("") + changed);
    shift.inWords().forEach(other -> sheet.row("  changed", plain(other, LONGEST)));
  }

  private static void finding(Sheet sheet, FindingRecord finding) {
    sheet.row("finding", plain(finding.text().orElse(""), LONGEST));
    finding.hint().ifPresent(hint -> sheet.row("  try", plain(hint, LONGEST)));
  }

  /** On one line, with nothing that a terminal would obey. */
  private static String plain(String text, int most) {
    return Escaping.visible(Escaping.shortened(text, most).replaceAll("\\s+", " "));
  }
}
