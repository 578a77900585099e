package dev.loopgauge.report.plot;

import dev.loopgauge.report.plot.Graph.Cloud;
import dev.loopgauge.report.plot.Graph.Form;
import dev.loopgauge.report.plot.Graph.Level;
import dev.loopgauge.report.plot.Graph.Line;
import dev.loopgauge.report.plot.Graph.Point;
import dev.loopgauge.report.plot.Graph.Stroke;
import dev.loopgauge.report.plot.Graph.Upright;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;

/** A graph over two axes. The texts of upright lines stand above all else, each in its own row. */
public final class GraphPlot extends ChartPlot {
  private static final int ROW = 17;
  private static final int NARROW_HEIGHT = 200;
  private static final int WIDE_HEIGHT = 240;
  private static final int EDGES = 62;
  private static final int ASIDE = 6;
  private static final int CHARACTER = 7;

  private final Graph graph;
  private final Extent extent;

  /** A plot of what the graph holds now. */
  public GraphPlot(Graph graph) {
    this.graph = graph;
    this.extent = Extent.of(graph);
  }

  @Override
  int height(Size size) {
    return inner(size) + EDGES;
  }

  /** The height of what is between the axes. */
  private int inner(Size size) {
    return (size == Size.NARROW ? NARROW_HEIGHT : WIDE_HEIGHT) + headroom();
  }

  private int headroom() {
    long texts = graph.uprights.stream().filter(upright -> !upright.text().isEmpty()).count();
    return (int) texts * ROW + (graph.notes.isEmpty() ? 0 : ROW);
  }

  @Override
  JFreeChart chart(Size size) {
    double perPixel = extent.height() / (inner(size) - headroom());
    Scale up = Scale.upTo("", extent.top());
    up.setRange(extent.bottom(), extent.top() + headroom() * perPixel);
    XYPlot plot = new XYPlot(lines(), across(), up, lineRenderer());
    plot.setDataset(1, clouds());
    plot.setRenderer(1, cloudRenderer());
    for (Level level : graph.levels) {
      level(plot, level);
    }
    double textTop = extent.top() + (headroom() - 1) * perPixel;
    for (Upright upright : graph.uprights) {
      upright(plot, upright, textTop, extent.width() / (size.width() - EDGES));
      textTop -= upright.text().isEmpty() ? 0 : ROW * perPixel;
    }
    Notes.write(plot, graph.notes, extent.width() / (size.width() - EDGES), 5 * perPixel);
    return Charts.chart(plot, graph.up, ASIDE);
  }

  private NumberAxis across() {
    NumberAxis across =
        graph.names.isEmpty()
            ? Scale.upTo(graph.across, Double.POSITIVE_INFINITY)
            : Scale.named(graph.across, graph.names);
    across.setRange(extent.left(), extent.right());
    return across;
  }

  private XYSeriesCollection lines() {
    XYSeriesCollection data = new XYSeriesCollection();
    for (Line line : graph.lines) {
      XYSeries series = new XYSeries(data.getSeriesCount(), false, true);
      line.points().forEach(point -> series.add(point.x(), point.y(), false));
      data.addSeries(series);
    }
    return data;
  }

  private XYLineAndShapeRenderer lineRenderer() {
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
    renderer.setDrawSeriesLineAsPath(true);
    for (int i = 0; i < graph.lines.size(); i++) {
      boolean whole = graph.lines.get(i).stroke() == Stroke.WHOLE;
      renderer.setSeriesPaint(i, (whole ? Ink.TEXT : Ink.PLANNED).colour());
      renderer.setSeriesStroke(i, whole ? Charts.LINE : Charts.DASHED);
    }
    return renderer;
  }

  private YIntervalSeriesCollection clouds() {
    YIntervalSeriesCollection data = new YIntervalSeriesCollection();
    for (Cloud cloud : graph.clouds) {
      YIntervalSeries series = new YIntervalSeries(data.getSeriesCount(), false, true);
      for (Point point : cloud.points()) {
        double off = point.uncertainty();
        series.add(point.x(), point.y(), point.y() - off, point.y() + off);
      }
      data.addSeries(series);
    }
    return data;
  }

  private XYErrorRenderer cloudRenderer() {
    XYErrorRenderer renderer = new XYErrorRenderer();
    renderer.setDrawXError(false);
    renderer.setCapLength(6);
    for (int i = 0; i < graph.clouds.size(); i++) {
      Form form = graph.clouds.get(i).form();
      renderer.setSeriesPaint(i, (form == Form.CROSS ? Ink.OTHER : Ink.MEASURED).colour());
      renderer.setSeriesShape(i, Shapes.of(form));
      renderer.setSeriesStroke(i, Charts.LINE);
    }
    return renderer;
  }

  private static void level(XYPlot plot, Level level) {
    if (level.around() > 0) {
      plot.addRangeMarker(
          Charts.strip(level.y() - level.around(), level.y() + level.around(), Ink.PLANNED),
          Layer.BACKGROUND);
    }
    plot.addRangeMarker(Charts.line(level.y(), Ink.PLANNED, Charts.DASHED), Layer.BACKGROUND);
  }

  private void upright(XYPlot plot, Upright upright, double y, double perPixel) {
    boolean whole = upright.stroke() == Stroke.WHOLE;
    Ink ink = whole ? Ink.MEASURED : Ink.PLANNED;
    if (upright.around() > 0) {
      plot.addDomainMarker(
          Charts.strip(upright.x() - upright.around(), upright.x() + upright.around(), ink),
          Layer.BACKGROUND);
    }
    plot.addDomainMarker(
        Charts.line(upright.x(), ink, whole ? Charts.LINE : Charts.DASHED), Layer.FOREGROUND);
    boolean toTheLeft = isWrittenToTheLeft(upright, perPixel);
    double gap = 4 * perPixel * (toTheLeft ? -1 : 1);
    Charts.write(
        plot,
        upright.text(),
        upright.x() + gap,
        y,
        toTheLeft ? TextAnchor.TOP_RIGHT : TextAnchor.TOP_LEFT);
  }

  /** Away from the next line where there is room, and never out of the plot. */
  private boolean isWrittenToTheLeft(Upright upright, double perPixel) {
    double text = (upright.text().length() + 1) * CHARACTER * perPixel;
    boolean roomLeft = upright.x() - text >= extent.left();
    boolean roomRight = upright.x() + text <= extent.right();
    boolean crossesNext =
        graph.uprights.stream()
            .anyMatch(other -> other.x() > upright.x() && other.x() < upright.x() + text);
    return roomLeft && (crossesNext || !roomRight);
  }
}
