package dev.loopgauge.report.plot;

import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYBarRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;

/**
 * Stretches of time below each other on one axis, such as the stages of a path one after the other,
 * and lines across them for limits. Each segment and each line has a row for its text, so that none
 * can hide another.
 */
public final class Bars extends ChartPlot {
  private static final int ROW_HEIGHT = 34;
  private static final int EDGES = 62;

  /** Room for half of the first and of the last tick's label, which are of four digits at most. */
  private static final int ASIDE = 16;

  private static final double BAR_BELOW = 0.36;
  private static final double TEXT_ABOVE = 0.1;

  private final String axis;
  private final List<Bar> bars;
  private final List<Mark> marks;

  /**
   * Bars from the top down, and marks, whose texts come above them.
   *
   * @param axis what the axis counts, with its unit
   */
  public Bars(String axis, List<Bar> bars, List<Mark> marks) {
    this.axis = axis;
    this.bars = List.copyOf(bars);
    this.marks = List.copyOf(marks);
  }

  /** What a bar stands for. */
  public enum Kind {
    /** A part of what was planned. */
    PART(Ink.QUIET),
    /** All of what was planned. */
    PLANNED(Ink.PLANNED),
    /** What was measured. */
    MEASURED(Ink.MEASURED);

    private final Ink ink;

    Kind(Ink ink) {
      this.ink = ink;
    }
  }

  /**
   * A segment.
   *
   * @param name what it is
   * @param fromMs where it begins, in ms
   * @param toMs where it ends, in ms
   * @param figure its length with the unit
   */
  public record Bar(Kind kind, String name, double fromMs, double toMs, String figure) {}

  /**
   * A line across all bars.
   *
   * @param text what it marks, with its figure
   * @param atMs where, in ms
   * @param firm whether it must not be passed
   */
  public record Mark(String text, double atMs, boolean firm) {}

  @Override
  int height(Size size) {
    return rows() * ROW_HEIGHT + EDGES;
  }

  private int rows() {
    return bars.size() + marks.size();
  }

  @Override
  JFreeChart chart(Size size) {
    XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
    for (Kind kind : Kind.values()) {
      data.addSeries(series(kind));
    }
    NumberAxis rows = Scale.upTo("", rows());
    rows.setVisible(false);
    rows.setInverted(true);
    rows.setRange(-0.5, rows() - 0.5);
    NumberAxis time = Scale.upTo(axis, Double.POSITIVE_INFINITY);
    time.setRange(lowest(), highest());
    XYPlot plot = new XYPlot(data, rows, time, renderer());
    plot.setOrientation(PlotOrientation.HORIZONTAL);
    plot.setDomainGridlinesVisible(false);
    for (int i = 0; i < marks.size(); i++) {
      mark(plot, marks.get(i), i);
    }
    for (int i = 0; i < bars.size(); i++) {
      Bar bar = bars.get(i);
      String text = Marking.of(bar.name()) + "  " + bar.figure();
      write(plot, text, marks.size() + i, bar.fromMs());
    }
    return Charts.chart(plot, "", ASIDE);
  }

  private XYIntervalSeries series(Kind kind) {
    XYIntervalSeries series = new XYIntervalSeries(kind);
    for (int i = 0; i < bars.size(); i++) {
      Bar bar = bars.get(i);
      if (bar.kind() == kind) {
        double row = marks.size() + i;
        series.add(row, row + TEXT_ABOVE, row + BAR_BELOW, bar.toMs(), bar.fromMs(), bar.toMs());
      }
    }
    return series;
  }

  private static XYBarRenderer renderer() {
    XYBarRenderer renderer = new XYBarRenderer();
    renderer.setUseYInterval(true);
    renderer.setShadowVisible(false);
    renderer.setBarPainter(new StandardXYBarPainter());
    int series = 0;
    for (Kind kind : Kind.values()) {
      renderer.setSeriesPaint(series++, kind.ink.colour());
    }
    return renderer;
  }

  private void mark(XYPlot plot, Mark mark, int row) {
    plot.addRangeMarker(
        Charts.line(mark.atMs(), Ink.TEXT, mark.firm() ? Charts.LINE : Charts.DASHED),
        Layer.FOREGROUND);
    write(plot, mark.text(), row, mark.atMs());
  }

  /** To the right of a point in the left half, to the left of one in the right half. */
  private void write(XYPlot plot, String text, double row, double ms) {
    boolean left = ms <= (lowest() + highest()) / 2;
    double gap = (highest() - lowest()) * (left ? 0.008 : -0.008);
    Charts.write(
        plot, text, row, ms + gap, left ? TextAnchor.BOTTOM_LEFT : TextAnchor.BOTTOM_RIGHT);
  }

  private double lowest() {
    double least = bars.stream().mapToDouble(Bar::fromMs).min().orElse(0);
    return Math.min(0, Math.min(least, marks.stream().mapToDouble(Mark::atMs).min().orElse(0)));
  }

  private double highest() {
    double most = bars.stream().mapToDouble(Bar::toMs).max().orElse(1);
    double all = Math.max(most, marks.stream().mapToDouble(Mark::atMs).max().orElse(most));
    return Math.max(all, lowest() + 1e-3) * 1.04;
  }
}
