package dev.loopgauge.report.plot;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Stroke;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.chart.ui.VerticalAlignment;

/** What all charts have in common: thin lines, no boxes, text in one size. */
final class Charts {
  static final Stroke LINE = new BasicStroke(1.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
  static final Stroke THIN = new BasicStroke(1);
  static final Stroke DASHED =
      new BasicStroke(1.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {6, 3}, 0);

  static final Font FONT = new Font(Font.SANS_SERIF, Font.PLAIN, 12);

  private Charts() {}

  /**
   * A chart of a plot, with a line of text above it that says what the upright axis counts.
   *
   * @param aside the room left and right, in CSS pixels
   */
  static JFreeChart chart(XYPlot plot, String heading, int aside) {
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setInsets(new RectangleInsets(2, aside, 2, aside));
    plot.setDomainGridlinePaint(Ink.GRID.colour());
    plot.setRangeGridlinePaint(Ink.GRID.colour());
    plot.setDomainGridlineStroke(THIN);
    plot.setRangeGridlineStroke(THIN);
    JFreeChart chart = new JFreeChart(null, FONT, plot, false);
    chart.setBackgroundPaint(null);
    chart.setPadding(RectangleInsets.ZERO_INSETS);
    if (!heading.isEmpty()) {
      chart.setTitle(
          new TextTitle(
              heading,
              FONT,
              Ink.TEXT.colour(),
              RectangleEdge.TOP,
              HorizontalAlignment.LEFT,
              VerticalAlignment.TOP,
              new RectangleInsets(0, 0, 4, 0)));
    }
    return chart;
  }

  /** An axis without ornaments. */
  static <A extends ValueAxis> A plain(A axis) {
    axis.setLabelFont(FONT);
    axis.setTickLabelFont(FONT);
    axis.setLabelPaint(Ink.TEXT.colour());
    axis.setTickLabelPaint(Ink.TEXT.colour());
    axis.setAxisLinePaint(Ink.QUIET.colour());
    axis.setTickMarkPaint(Ink.QUIET.colour());
    return axis;
  }

  /** A line across, at a value. */
  static ValueMarker line(double value, Ink ink, Stroke stroke) {
    return new ValueMarker(value, ink.colour(), stroke);
  }

  /** A strip across, between two values. */
  static IntervalMarker strip(double from, double to, Ink ink) {
    return new IntervalMarker(from, to, ink.veil());
  }

  /** Puts text to a point of the plot. */
  static void write(XYPlot plot, String text, double x, double y, TextAnchor anchor) {
    XYTextAnnotation note = new XYTextAnnotation(text, x, y);
    note.setFont(FONT);
    note.setPaint(Ink.TEXT.colour());
    note.setTextAnchor(anchor);
    plot.addAnnotation(note);
  }
}
