package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.Step;
import dev.loopgauge.estimate.Track;
import dev.loopgauge.estimate.TrackPoint;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.util.ArrayList;
import java.util.List;

/** The track document as text: what happened in words first, then a table that fits a screen. */
final class TrackText {
  private static final int MOST_ROWS = 20;
  private static final int MOST_SAMPLE_DECIMALS = 3;

  private final TrackDocument document;
  private final Track track;
  private final Sheet sheet = new Sheet();

  TrackText(TrackDocument document) {
    this.document = document;
    this.track = document.track();
    sheet.line(headline());
    if (!track.points().isEmpty()) {
      table();
      track.steps().forEach(this::step);
      drift();
    }
    track
        .findings()
        .forEach(
            finding -> {
              sheet.row("finding", finding.text());
              sheet.row("  try", finding.hint());
            });
    if (track.leftOut() > 0) {
      sheet.row("left out", windows(track.leftOut()) + " in which the delay can't be told");
    }
    document.notes().forEach(note -> sheet.row("note", note));
  }

  private String headline() {
    if (track.points().isEmpty()) {
      return "No trustworthy reading: " + track.findings().get(0).text() + ".";
    }
    int count = track.steps().size();
    String steps = count == 0 ? "no step" : count == 1 ? "1 step" : count + " steps";
    return "TRACKED: "
        + windows(track.points().size())
        + " of "
        + Numbers.brief(track.windowSeconds(), 3)
        + " s, "
        + steps
        + ".";
  }

  private static String windows(int count) {
    return count == 1 ? "1 window" : count + " windows";
  }

  /**
   * Every window of a short track; of a long one evenly many, the first and the last among them.
   */
  private List<TrackPoint> rows() {
    List<TrackPoint> points = track.points();
    if (points.size() <= MOST_ROWS) {
      return points;
    }
    List<TrackPoint> rows = new ArrayList<>();
    for (int i = 0; i < MOST_ROWS; i++) {
      rows.add(points.get((int) ((long) i * (points.size() - 1) / (MOST_ROWS - 1))));
    }
    return rows;
  }

  private void table() {
    new Table<TrackPoint>()
        .figures("at", point -> Numbers.clock(point.atSeconds()))
        .figures("samples", point -> Numbers.plain(point.delay().samples(), decimals(point)))
        .figures("±", point -> Numbers.plainUp(point.uncertaintySamples(), decimals(point)))
        .figures("ms", point -> Numbers.plain(point.delay().ms(), 3))
        .lines(rows())
        .forEach(sheet::asIs);
    if (rows().size() < track.points().size()) {
      sheet.row("shown", rows().size() + " of them; --json has all");
    }
  }

  private static int decimals(TrackPoint point) {
    return Numbers.decimalsFor(point.uncertaintySamples(), MOST_SAMPLE_DECIMALS);
  }

  private void step(Step step) {
    sheet.row(
        "step",
        "at "
            + Numbers.clock(step.atSeconds())
            + ", from "
            + Numbers.plain(step.fromSamples(), 2)
            + " to "
            + Numbers.plain(step.toSamples(), 2)
            + " samples"
            + document.inBlocks(step));
  }

  private void drift() {
    track
        .drift()
        .ifPresent(
            drift ->
                sheet.row(
                    "drift",
                    "%s ± %s ppm between steps"
                        .formatted(
                            Numbers.plain(drift.ppm(), 3),
                            Numbers.roundedUp(drift.uncertaintyPpm(), 3).toPlainString())));
    document.towardsLimit().ifPresent(limit -> sheet.row("limit", limit.text()));
  }

  /** All of it. */
  @Override
  public String toString() {
    return sheet.toString();
  }
}
