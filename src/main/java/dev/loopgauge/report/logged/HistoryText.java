package dev.loopgauge.report.logged;

import dev.loopgauge.journal.HistoryPoint.Mark;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.report.logged.HistoryDocument.DriftRecord;
import dev.loopgauge.report.logged.HistoryDocument.PointRecord;
import dev.loopgauge.report.logged.HistoryDocument.StepRecord;
import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The history of a path as text: what there is to know, then the last entries. */
final class HistoryText {
  private static final int MOST_ROWS = 20;
  private static final int MOST_STEPS = 5;
  private static final int SHOW_COLUMNS = 20;
  private static final double MONTH_DAYS = 30;

  private final HistoryDocument document;
  private final Sheet sheet = new Sheet();

  HistoryText(HistoryDocument document) {
    this.document = document;
    sheet.line(verdict());
    double level = document.levelSamples().doubleValue();
    sheet.row("level", Numbers.plain(level, 2) + " samples since the last step");
    sheet.row("drift", document.drift().map(HistoryText::drift).orElse("too few readings to tell"));
    int steps = document.steps().size();
    document.steps().subList(Math.max(0, steps - MOST_STEPS), steps).forEach(this::step);
    table();
    document.notes().forEach(note -> sheet.row("note", OneLine.line(note)));
  }

  private String verdict() {
    int steps = document.steps().size();
    return "%s: %d entries, %d step%s, %d outlier%s%s."
        .formatted(
            OneLine.line(document.path()),
            document.points().size(),
            steps,
            steps == 1 ? "" : "s",
            count(Mark.OUTLIER),
            count(Mark.OUTLIER) == 1 ? "" : "s",
            count(Mark.NO_NUMBER) == 0 ? "" : ", " + count(Mark.NO_NUMBER) + " without a number");
  }

  private long count(Mark mark) {
    return document.points().stream().filter(point -> point.mark() == mark).count();
  }

  private static String drift(DriftRecord drift) {
    String over =
        " (%d readings over %s days)"
            .formatted(drift.readings(), Numbers.brief(drift.days().doubleValue(), 0));
    if (!drift.drifts()) {
      return "none to be seen" + over;
    }
    return "%s samples in 30 days, 95 %% between %s and %s"
            .formatted(
                monthly(drift.samplesPerDay()),
                monthly(drift.lowSamplesPerDay()),
                monthly(drift.highSamplesPerDay()))
        + over;
  }

  private static String monthly(BigDecimal samplesPerDay) {
    return Numbers.signed(samplesPerDay.doubleValue() * MONTH_DAYS, 2);
  }

  private void step(StepRecord step) {
    sheet.row(
        "step",
        Numbers.signed(step.samples().doubleValue(), 2)
            + " samples between "
            + told(step.before())
            + " and "
            + told(step.after()));
    for (int i = 0; i < step.causes().size(); i++) {
      String label = i < step.standings().size() ? step.standings().get(i).label() : "cause";
      sheet.row("  " + label, OneLine.line(step.causes().get(i)));
    }
  }

  private String told(String id) {
    return document.points().stream()
        .map(PointRecord::listed)
        .filter(listed -> listed.id().equals(id))
        .findFirst()
        .map(HistoryText::told)
        .orElse("entry " + OneLine.line(id));
  }

  private static String told(ListedRecord listed) {
    return "%s (%s)"
        .formatted(Logs.brief(listed.time()), OneLine.brief(listed.show(), SHOW_COLUMNS));
  }

  private void table() {
    List<PointRecord> points = document.points();
    int from = Math.max(0, points.size() - MOST_ROWS);
    sheet.gap();
    new Table<PointRecord>()
        .words("id", point -> point.listed().shortId())
        .words("measured at", point -> Logs.brief(point.listed().time()))
        .words("show", point -> OneLine.brief(point.listed().show(), SHOW_COLUMNS))
        .words("", point -> point.listed().when().label())
        .figures("samples", HistoryText::samples)
        .words("", HistoryText::mark)
        .tell(points.subList(from, points.size()), sheet);
    if (from > 0) {
      sheet.line("The last " + MOST_ROWS + "; --json has them all.");
    }
  }

  private static String samples(PointRecord point) {
    return point.listed().delay().map(ShownDelay::inSamples).orElse("none");
  }

  private static String mark(PointRecord point) {
    Stream<String> delay =
        switch (point.mark()) {
          case USUAL, NO_NUMBER -> Stream.empty();
          case STEP -> Stream.of("step");
          case OUTLIER -> Stream.of("odd");
        };
    Stream<String> others =
        point.changedAspects().stream().flatMap(List::stream).map(AspectWords::name);
    return Stream.concat(delay, others).collect(Collectors.joining(", "));
  }

  /** All of it. */
  @Override
  public String toString() {
    return sheet.toString();
  }
}
