package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.report.measured.TrackDocument.PointRecord;
import dev.loopgauge.report.measured.TrackDocument.StepRecord;
import java.util.ArrayList;
import java.util.List;

/** The track document as text: what happened in words first, then a table that fits a screen. */
final class TrackText {
  private static final int MOST_ROWS = 20;
  private final TrackDocument document;
  private final List<PointRecord> points;
  private final Sheet sheet = new Sheet();

  private TrackText(TrackDocument document) {
    this.document = document;
    this.points = document.track();
  }

  /** The text. */
  static String of(TrackDocument document) {
    TrackText text = new TrackText(document);
    text.tell();
    return text.sheet.toString();
  }

  private void tell() {
    sheet.line(headline());
    if (!points.isEmpty()) {
      table();
      document.steps().forEach(this::step);
      drift();
    }
    document.findings().forEach(finding -> finding.tell(sheet));
    document
        .windowsLeftOut()
        .filter(count -> count > 0)
        .ifPresent(
            count -> sheet.row("left out", windows(count) + " in which the delay can't be told"));
    document.notes().forEach(note -> sheet.row("note", note));
  }

  private String headline() {
    if (points.isEmpty()) {
      String why =
          document.findings().stream()
              .findFirst()
              .flatMap(FindingRecord::text)
              .orElse("the document doesn't say why");
      return "No trustworthy reading: " + why + ".";
    }
    int count = document.steps().size();
    String steps = count == 0 ? "no jump" : count == 1 ? "1 jump" : count + " jumps";
    String each =
        document
            .windowSeconds()
            .map(seconds -> " of " + Numbers.brief(seconds.doubleValue(), 3) + " s")
            .orElse("");
    return "FOLLOWED: " + windows(points.size()) + each + ", " + steps + ".";
  }

  private static String windows(int count) {
    return count == 1 ? "1 window" : count + " windows";
  }

  /**
   * Every window of a short track; of a long one evenly many, the first and the last among them.
   */
  private List<PointRecord> rows() {
    if (points.size() <= MOST_ROWS) {
      return points;
    }
    List<PointRecord> rows = new ArrayList<>();
    for (int i = 0; i < MOST_ROWS; i++) {
      rows.add(points.get((int) ((long) i * (points.size() - 1) / (MOST_ROWS - 1))));
    }
    return rows;
  }

  private void table() {
    Table<PointRecord> table =
        new Table<PointRecord>()
            .figures("at", point -> Numbers.clock(point.atSeconds().doubleValue()))
            .figures("samples", point -> point.shown(1).bareSamples())
            .figures("±", point -> point.shown(1).uncertainty());
    document
        .sampleRateHz()
        .ifPresent(rate -> table.figures("ms", point -> Numbers.plain(point.shown(rate).ms(), 3)));
    table.lines(rows()).forEach(sheet::asIs);
    if (rows().size() < points.size()) {
      sheet.row("shown", rows().size() + " of them; --json has all");
    }
  }

  private void step(StepRecord step) {
    sheet.row(
        "jump",
        "at "
            + Numbers.clock(step.atSeconds().doubleValue())
            + ", from "
            + Numbers.plain(step.fromSamples().doubleValue(), 2)
            + " to "
            + Numbers.plain(step.toSamples().doubleValue(), 2)
            + " samples"
            + step.blocks().map(blocks -> ", " + Figures.blocks(blocks)).orElse(""));
  }

  private void drift() {
    document
        .clockDriftPpm()
        .ifPresent(
            ppm ->
                sheet.row(
                    "drift",
                    Numbers.plain(ppm.doubleValue(), 3)
                        + document.clockDriftUncertaintyPpm().map(u -> " ± " + u).orElse("")
                        + " ppm between jumps"));
    document.towardsLimit().ifPresent(limit -> sheet.row("limit", limit.text()));
  }
}
