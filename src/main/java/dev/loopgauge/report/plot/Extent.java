package dev.loopgauge.report.plot;

import dev.loopgauge.report.plot.Graph.Point;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * How far a graph reaches, with a little room around all that is in it.
 *
 * @param left the least across
 * @param right the most across
 * @param bottom the least upright
 * @param top the most upright
 */
record Extent(double left, double right, double bottom, double top) {
  private static final double ROOM = 0.05;

  /** The least reach, relative to the values, so that equal values don't make an empty axis. */
  private static final double LEAST = 1e-6;

  /** Of all that a graph holds. */
  static Extent of(Graph graph) {
    double[] across =
        span(
            Stream.of(
                    points(graph).map(Point::x),
                    graph.uprights.stream().map(Graph.Upright::x),
                    graph.names.keySet().stream())
                .flatMap(values -> values)
                .mapToDouble(Double::doubleValue));
    double[] up =
        widened(
            graph.leastHeight,
            span(
                Stream.of(
                        points(graph).flatMap(p -> both(p.y(), p.uncertainty())),
                        graph.levels.stream().flatMap(level -> both(level.y(), level.around())))
                    .flatMap(values -> values)
                    .mapToDouble(Double::doubleValue)));
    boolean fromLineToLine = graph.clouds.isEmpty() && graph.names.isEmpty();
    double aside = fromLineToLine ? 0 : (across[1] - across[0]) * ROOM;
    double above = (up[1] - up[0]) * ROOM;
    return new Extent(across[0] - aside, across[1] + aside, up[0] - above, up[1] + above);
  }

  private static double[] widened(double least, double[] span) {
    double beside = Math.max(0, least - (span[1] - span[0])) / 2;
    return new double[] {span[0] - beside, span[1] + beside};
  }

  private static Stream<Point> points(Graph graph) {
    return Stream.concat(
            graph.lines.stream().map(Graph.Line::points),
            graph.clouds.stream().map(Graph.Cloud::points))
        .flatMap(List::stream);
  }

  private static Stream<Double> both(double value, double around) {
    return Stream.of(value - around, value + around);
  }

  private static double[] span(DoubleStream values) {
    double[] all = values.sorted().toArray();
    double least = all.length == 0 ? 0 : all[0];
    double most = all.length == 0 ? 1 : all[all.length - 1];
    double room = Math.max(Math.abs(most), 1) * LEAST;
    return most - least > room ? new double[] {least, most} : new double[] {least - 1, most + 1};
  }

  double width() {
    return right - left;
  }

  double height() {
    return top - bottom;
  }
}
