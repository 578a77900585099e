package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.report.measured.TrackDocument.PointRecord;
import dev.loopgauge.report.measured.TrackDocument.StepRecord;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The track document as text: what happened in words first, then a table that fits a screen. */
final class TrackText {
  private static final int MOST_ROWS = 20;
  private static final int MOST_CAUSES = 4;
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
    document.comparison().ifPresent(this::budget);
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
    if (document.comparison().isPresent()) {
      return compared(document.comparison().get());
    }
    return Headline.of(followed(), document.verdict()).line();
  }

  /** The window that stands worst, as the delay of the whole. */
  private String compared(ComparisonRecord comparison) {
    PointRecord worst = worst(comparison);
    String line =
        document
            .sampleRateHz()
            .map(rate -> Verdicts.line(worst.shown(rate), false, false, Optional.of(comparison)))
            .orElseGet(this::followed);
    return Headline.of(line, document.verdict()).line();
  }

  private PointRecord worst(ComparisonRecord comparison) {
    BigDecimal delay = comparison.predictedSamples().add(comparison.differenceSamples());
    return points.stream()
        .min(Comparator.comparing(p -> p.delaySamples().subtract(delay).abs()))
        .orElseThrow();
  }

  private String followed() {
    int count = document.steps().size();
    String steps = count == 0 ? "no jump" : count == 1 ? "1 jump" : count + " jumps";
    String each =
        document
            .windowSeconds()
            .map(seconds -> " of " + Numbers.brief(seconds.doubleValue(), 3) + " s")
            .orElse("");
    return "FOLLOWED: " + windows(points.size()) + each + ", " + steps + ".";
  }

  private void budget(ComparisonRecord comparison) {
    document
        .sampleRateHz()
        .ifPresent(
            rate ->
                sheet.row("budget", Figures.predicted(comparison, worst(comparison).shown(rate))));
    comparison.explanations().stream()
        .limit(MOST_CAUSES)
        .forEach(cause -> sheet.row("may be", cause.text()));
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
    table.tell(rows(), sheet);
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
