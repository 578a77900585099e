package dev.loopgauge.report.plot;

import dev.loopgauge.report.plot.Lanes.Sign;
import java.awt.Shape;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;

/** The shapes that say how a path stands, about ten CSS pixels across. */
final class Signs {
  private Signs() {}

  /** The shape around a point. */
  static Shape of(Sign sign, double x, double y) {
    return switch (sign) {
      case GOOD -> disc(x, y, 4.5);
      case BAD -> corners(x, y - 5.5, x + 5.5, y + 4.5, x - 5.5, y + 4.5);
      case UNDECIDED -> corners(x, y - 5.5, x + 5.5, y, x, y + 5.5, x - 5.5, y);
      case NOT_JUDGED -> ring(x, y);
    };
  }

  static Ink ink(Sign sign) {
    return switch (sign) {
      case GOOD -> Ink.GOOD;
      case BAD -> Ink.BAD;
      case UNDECIDED -> Ink.UNDECIDED;
      case NOT_JUDGED -> Ink.SOFT;
    };
  }

  private static Shape disc(double x, double y, double radius) {
    return new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
  }

  private static Shape ring(double x, double y) {
    Area ring = new Area(disc(x, y, 4.5));
    ring.subtract(new Area(disc(x, y, 3)));
    return ring;
  }

  private static Shape corners(double... points) {
    Path2D path = new Path2D.Double();
    path.moveTo(points[0], points[1]);
    for (int i = 2; i < points.length; i += 2) {
      path.lineTo(points[i], points[i + 1]);
    }
    path.closePath();
    return path;
  }
}
