package dev.loopgauge.report.plot;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.util.ShapeUtils;

/** The forms of points, about eight CSS pixels across. */
final class Shapes {
  private Shapes() {}

  static Shape of(Graph.Form form) {
    return switch (form) {
      case ROUND -> new Ellipse2D.Double(-4, -4, 8, 8);
      case TRIANGLE -> ShapeUtils.createUpTriangle(5);
      case SQUARE -> new Rectangle2D.Double(-4, -4, 8, 8);
      case CROSS -> ShapeUtils.createDiagonalCross(4, 1);
    };
  }
}
