package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Cause;
import dev.loopgauge.journal.DelayTrend;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.History;
import dev.loopgauge.journal.HistoryPoint;
import dev.loopgauge.journal.HistoryPoint.Mark;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.util.List;

/** The history of a path as text: what there is to know, then the last entries. */
final class HistoryText {
  private static final int MOST_ROWS = 20;
  private static final int MOST_STEPS = 5;
  private static final int SHOW_COLUMNS = 20;
  private static final double MONTH_DAYS = 30;

  private final HistoryDocument document;
  private final History history;
  private final Sheet sheet = new Sheet();

  HistoryText(HistoryDocument document) {
    this.document = document;
    this.history = document.history();
    sheet.line(verdict());
    sheet.row("level", Numbers.plain(history.levelSamples(), 2) + " samples since the last step");
    sheet.row("drift", history.drift().map(HistoryText::drift).orElse("too few readings to tell"));
    int steps = history.steps().size();
    history.steps().subList(Math.max(0, steps - MOST_STEPS), steps).forEach(this::step);
    table();
  }

  private String verdict() {
    return "%s: %d entries, %d step%s, %d outlier%s%s."
        .formatted(
            OneLine.line(document.path()),
            history.points().size(),
            history.steps().size(),
            history.steps().size() == 1 ? "" : "s",
            count(Mark.OUTLIER),
            count(Mark.OUTLIER) == 1 ? "" : "s",
            count(Mark.NO_NUMBER) == 0 ? "" : ", " + count(Mark.NO_NUMBER) + " without a number");
  }

  private long count(Mark mark) {
    return history.points().stream().filter(point -> point.mark() == mark).count();
  }

  private static String drift(DelayTrend drift) {
    String over =
        " (%d readings over %s days)".formatted(drift.readings(), Numbers.brief(drift.days(), 0));
    if (!drift.isThere()) {
      return "none to be seen" + over;
    }
    return "%s samples in 30 days, 95 %% between %s and %s"
            .formatted(
                Numbers.signed(drift.samplesPerDay() * MONTH_DAYS, 2),
                Numbers.signed(drift.low() * MONTH_DAYS, 2),
                Numbers.signed(drift.high() * MONTH_DAYS, 2))
        + over;
  }

  private void step(History.Step step) {
    String told =
        Numbers.signed(step.samples(), 2)
            + " samples between "
            + told(step.before())
            + " and "
            + told(step.after());
    sheet.row("step", told);
    List<Cause> causes = document.causes(step);
    causes.forEach(cause -> sheet.row("  " + cause.standing().label(), OneLine.line(cause.text())));
  }

  private static String told(Heading heading) {
    return "%s (%s)"
        .formatted(Logs.brief(heading.at()), OneLine.brief(heading.show(), SHOW_COLUMNS));
  }

  private void table() {
    List<HistoryPoint> points = history.points();
    int from = Math.max(0, points.size() - MOST_ROWS);
    sheet.gap();
    new Table<HistoryPoint>()
        .words("id", point -> point.heading().shortId())
        .words("measured at", point -> Logs.brief(point.heading().at()))
        .words("show", point -> OneLine.brief(point.heading().show(), SHOW_COLUMNS))
        .words("", point -> point.heading().when().label())
        .figures("samples", point -> point.heading().delay().map(Logs::samples).orElse("none"))
        .words("", point -> mark(point.mark()))
        .lines(points.subList(from, points.size()))
        .forEach(sheet::asIs);
    if (from > 0) {
      sheet.line("The last " + MOST_ROWS + "; --json has them all.");
    }
  }

  private static String mark(Mark mark) {
    return switch (mark) {
      case USUAL, NO_NUMBER -> "";
      case STEP -> "step";
      case OUTLIER -> "odd";
    };
  }

  /** All of it. */
  @Override
  public String toString() {
    return sheet.toString();
  }
}
