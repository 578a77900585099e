package dev.loopgauge.report.plot;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.JFreeChart;

/** A plot that the charting library lays out. */
abstract class ChartPlot extends Plot {
  /** The chart for a size. */
  abstract JFreeChart chart(Size size);

  @Override
  final void draw(Graphics2D canvas, Size size) {
    chart(size).draw(canvas, new Rectangle2D.Double(0, 0, size.width(), height(size)));
  }
}
