package dev.loopgauge.report.html;

import static j2html.TagCreator.p;

import dev.loopgauge.report.form.Fields;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.plot.Graph;
import dev.loopgauge.report.plot.Graph.Point;
import dev.loopgauge.report.plot.Graph.Stroke;
import dev.loopgauge.report.plot.GraphPlot;
import j2html.tags.DomContent;
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

  /** The section; empty for another document. */
  static Optional<Section> of(Fields document, String id) {
    List<Point> points =
        document.parts("track").stream().flatMap(point -> point(point).stream()).toList();
    if (points.isEmpty()) {
      return Optional.empty();
    }
    List<Fields> steps =
        document.parts("steps").stream()
            .filter(step -> step.number("atSeconds").isPresent())
            .toList();
    List<DomContent> content = new ArrayList<>();
    content.add(p(sentence(document, steps.size())).withClass("lead"));
    if (!steps.isEmpty()) {
      content.add(table(steps).html());
    }
    content.add(figure(points, steps).html(id));
    if (!document.parts("findings").isEmpty()) {
      content.add(FindingsPart.of(document.parts("findings")));
    }
    return Optional.of(new Section(id + "-part", "Through the recording", content));
  }

  private static Optional<Point> point(Fields point) {
    return point
        .number("atSeconds")
        .flatMap(
            at ->
                point
                    .number("delaySamples")
                    .map(
                        samples ->
                            new Point(
                                at, samples, point.number("uncertaintySamples").orElse(0.0))));
  }

  private static String sentence(Fields document, int steps) {
    String drift =
        document
            .number("clockDriftPpm")
            .map(ppm -> " Between steps the clocks drift by " + Numbers.plain(ppm, 3) + " ppm.")
            .orElse("");
    return (steps == 0
            ? "The delay made no step."
            : "The delay made " + (steps == 1 ? "1 step." : steps + " steps."))
        + drift;
  }

  private static Grid table(List<Fields> steps) {
    Grid grid = new Grid("Steps of the delay, in samples", "at", "from", "to", "change", "blocks");
    for (int i = 0; i < steps.size(); i++) {
      Fields step = steps.get(i);
      double from = step.number("fromSamples").orElse(0.0);
      double to = step.number("toSamples").orElse(0.0);
      String letter = steps.size() > MOST_TEXTS ? letter(i) + " " : "";
      grid.row(
          letter + Numbers.clock(step.number("atSeconds").orElse(0.0)),
          Numbers.plain(from, 2),
          Numbers.plain(to, 2),
          Numbers.signed(to - from, 2),
          step.number("blocks").map(blocks -> Numbers.signed(blocks, 0)).orElse(""));
    }
    return grid;
  }

  private static String letter(int index) {
    return Character.toString('A' + index % 26);
  }

  private static Figure figure(List<Point> points, List<Fields> steps) {
    boolean minutes = points.get(points.size() - 1).x() > 3 * SECONDS;
    double unit = minutes ? SECONDS : 1;
    Graph graph = new Graph(minutes ? "minutes" : "seconds", "delay, samples");
    double from = Double.NEGATIVE_INFINITY;
    double highest = points.stream().mapToDouble(Point::y).max().orElse(0);
    for (int i = 0; i < steps.size(); i++) {
      double at = steps.get(i).number("atSeconds").orElse(0.0);
      line(graph, points, from, at, unit);
      mark(graph, i, steps, at / unit, highest);
      from = at;
    }
    line(graph, points, from, Double.POSITIVE_INFINITY, unit);
    return new Figure(
        new GraphPlot(graph),
        "Delay over time",
        "The line is the delay, window by window."
            + (steps.isEmpty() ? "" : " Upright dashed lines are steps."),
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

  private static void mark(Graph graph, int index, List<Fields> steps, double at, double highest) {
    if (steps.size() > MOST_TEXTS) {
      graph.upright(at, 0, "", Stroke.DASHED).note(at, highest, letter(index));
      return;
    }
    Fields step = steps.get(index);
    double change = step.number("toSamples").orElse(0.0) - step.number("fromSamples").orElse(0.0);
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
