package dev.loopgauge.report.html;

import static j2html.TagCreator.p;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.measured.TrackDocument;
import dev.loopgauge.report.measured.TrackDocument.PointRecord;
import dev.loopgauge.report.measured.TrackDocument.StepRecord;
import dev.loopgauge.report.plot.Graph;
import dev.loopgauge.report.plot.Graph.Point;
import dev.loopgauge.report.plot.Graph.Stroke;
import dev.loopgauge.report.plot.GraphPlot;
import j2html.tags.DomContent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The delay through a long recording, with its steps. */
final class TrackPart {
  private static final int MOST_ROWS = 20;

  /** More than these, and the texts of steps would fill the plot: then letters stand for them. */
  private static final int MOST_TEXTS = 3;

  private static final double SECONDS = 60;

  private TrackPart() {}

  /** The section; empty where the delay can't be told. */
  static Optional<Section> of(TrackDocument document, String id) {
    List<Point> points = document.track().stream().map(TrackPart::point).toList();
    if (points.isEmpty()) {
      return Optional.empty();
    }
    List<StepRecord> steps = document.steps();
    List<DomContent> content = new ArrayList<>();
    content.add(p(sentence(document)).withClass("lead"));
    if (!steps.isEmpty()) {
      content.add(table(steps).html());
    }
    content.add(figure(points, steps).html(id));
    if (!document.findings().isEmpty()) {
      content.add(FindingsPart.of(document.findings()));
    }
    return Optional.of(new Section(id + "-part", "Through the recording", content));
  }

  private static Point point(PointRecord point) {
    return new Point(
        point.atSeconds().doubleValue(),
        point.delaySamples().doubleValue(),
        point.uncertaintySamples().map(BigDecimal::doubleValue).orElse(0.0));
  }

  private static String sentence(TrackDocument document) {
    String drift =
        document
            .clockDriftPpm()
            .map(ppm -> Numbers.plain(ppm.doubleValue(), 3))
            .map(ppm -> " Between jumps the clocks drift by " + ppm + " ppm.")
            .orElse("");
    return jumps(document.steps()) + drift;
  }

  /** The jumps in words: of one when and how far, of several how many. */
  static String jumps(List<StepRecord> steps) {
    if (steps.isEmpty()) {
      return "The delay didn't jump.";
    }
    if (steps.size() > 1) {
      return "The delay jumped " + steps.size() + " times.";
    }
    StepRecord jump = steps.get(0);
    return "The delay jumped once, at "
        + Numbers.clock(jump.atSeconds().doubleValue())
        + ", by "
        + Numbers.signed(jump.toSamples().subtract(jump.fromSamples()).doubleValue(), 1)
        + " samples.";
  }

  private static Grid table(List<StepRecord> steps) {
    Grid grid = new Grid("Jumps of the delay, in samples", "at", "from", "to", "change", "blocks");
    for (int i = 0; i < steps.size(); i++) {
      StepRecord step = steps.get(i);
      double from = step.fromSamples().doubleValue();
      double to = step.toSamples().doubleValue();
      String letter = steps.size() > MOST_TEXTS ? letter(i) + " " : "";
      grid.row(
          letter + Numbers.clock(step.atSeconds().doubleValue()),
          Numbers.plain(from, 2),
          Numbers.plain(to, 2),
          Numbers.signed(to - from, 2),
          step.blocks().map(blocks -> Numbers.signed(blocks, 0)).orElse(""));
    }
    return grid;
  }

  private static String letter(int index) {
    return Character.toString('A' + index % 26);
  }

  private static PlotFigure figure(List<Point> points, List<StepRecord> steps) {
    boolean minutes = points.get(points.size() - 1).x() > 3 * SECONDS;
    double unit = minutes ? SECONDS : 1;
    Graph graph = new Graph(minutes ? "minutes" : "seconds", "delay, samples");
    double from = Double.NEGATIVE_INFINITY;
    double highest = points.stream().mapToDouble(Point::y).max().orElse(0);
    for (int i = 0; i < steps.size(); i++) {
      double at = steps.get(i).atSeconds().doubleValue();
      line(graph, points, from, at, unit);
      mark(graph, i, steps, at / unit, highest);
      from = at;
    }
    line(graph, points, from, Double.POSITIVE_INFINITY, unit);
    return new PlotFigure(
        new GraphPlot(graph),
        "Delay over time",
        "The line is the delay, window by window."
            + (steps.isEmpty() ? "" : " Upright dashed lines are jumps."),
        windows(points));
  }

  private static void line(Graph graph, List<Point> points, double from, double to, double unit) {
    graph.line(
        points.stream()
            .filter(point -> point.x() >= from && point.x() < to)
            .map(point -> new Point(point.x() / unit, point.y(), point.uncertainty()))
            .toList(),
        Stroke.WHOLE);
  }

  private static void mark(
      Graph graph, int index, List<StepRecord> steps, double at, double highest) {
    if (steps.size() > MOST_TEXTS) {
      graph.upright(at, 0, "", Stroke.DASHED).note(at, highest, letter(index));
      return;
    }
    StepRecord step = steps.get(index);
    double change = step.toSamples().doubleValue() - step.fromSamples().doubleValue();
    graph.upright(at, 0, Numbers.signed(change, 1) + " samples", Stroke.DASHED);
  }

  private static Grid windows(List<Point> points) {
    int shown = Math.min(points.size(), MOST_ROWS);
    String some = shown < points.size() ? ", " + shown + " of " + points.size() : "";
    Grid grid = new Grid("Delay by window" + some, "at", "samples", "±");
    for (int i = 0; i < shown; i++) {
      int at = shown == 1 ? 0 : (int) ((long) i * (points.size() - 1) / (shown - 1));
      Point point = points.get(at);
      int decimals = point.uncertainty() > 0 ? Numbers.decimalsFor(point.uncertainty(), 3) : 2;
      grid.row(
          Numbers.clock(point.x()),
          Numbers.plain(point.y(), decimals),
          Numbers.plainUp(point.uncertainty(), decimals));
    }
    return grid;
  }
}
