package dev.loopgauge.report.html;

import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.logged.Logs;
import dev.loopgauge.report.plot.Graph;
import dev.loopgauge.report.plot.Graph.Form;
import dev.loopgauge.report.plot.Graph.Point;
import dev.loopgauge.report.plot.GraphPlot;
import dev.loopgauge.stats.Median;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One path's delay from reading to reading, over all shows that are known. */
final class HistoryPart {
  /** Two readings have no median that tells anything. */
  private static final int FEWEST = 3;

  private static final int MOST_POINTS = 100;
  private static final int MOST_ROWS = 24;

  private HistoryPart() {}

  /**
   * The figure; empty with fewer than three readings.
   *
   * @param logged the readings in the order of their time
   * @param rateHz the rate of those that are shown; others can't be put on one axis
   */
  static Optional<PlotFigure> of(List<Logged> logged, double rateHz) {
    List<Logged> all = logged.stream().filter(l -> l.delay().rateHz() == rateHz).toList();
    List<Logged> same = all.subList(Math.max(0, all.size() - MOST_POINTS), all.size());
    if (same.size() < FEWEST) {
      return Optional.empty();
    }
    Graph graph = new Graph("reading", "delay, samples");
    for (When when : When.values()) {
      List<Point> points = new ArrayList<>();
      for (int i = 0; i < same.size(); i++) {
        if (same.get(i).when() == when) {
          ShownDelay delay = same.get(i).delay();
          points.add(new Point(i + 1, delay.samples(), delay.uncertaintySamples()));
        }
      }
      graph.points(points, form(when));
    }
    for (int i = 1; i <= same.size(); i++) {
      graph.name(i, Integer.toString(i));
    }
    double middle = Median.of(same.stream().mapToDouble(l -> l.delay().samples()).toArray());
    graph.level(middle, 0);
    return Optional.of(
        new PlotFigure(
            new GraphPlot(graph),
            "Delay over shows",
            (same.size() < all.size() ? "The last " + same.size() + " readings. " : "")
                + "Each point is a reading with its uncertainty: triangles before, squares during,"
                + " circles after a show. The dashed line is the median, "
                + Numbers.plain(middle, 2)
                + " samples.",
            table(same, middle)));
  }

  private static Grid table(List<Logged> same, double middle) {
    int first = Math.max(0, same.size() - MOST_ROWS);
    String some = first > 0 ? ", the last " + MOST_ROWS + " of " + same.size() : "";
    Grid grid = new Grid("Readings" + some, "Reading", "samples", "off the median");
    for (int i = first; i < same.size(); i++) {
      Logged logged = same.get(i);
      grid.row(
          "%d. %s, %s, %s"
              .formatted(
                  i + 1,
                  Escaping.shortened(logged.show(), 60),
                  logged.when().label(),
                  Logs.brief(logged.at())),
          logged.delay().inSamples(),
          Numbers.signed(logged.delay().samples() - middle, logged.delay().sampleDecimals()));
    }
    return grid;
  }

  private static Form form(When when) {
    return switch (when) {
      case BEFORE -> Form.TRIANGLE;
      case DURING -> Form.SQUARE;
      case AFTER -> Form.ROUND;
    };
  }
}
