package dev.loopgauge.report.plot;

import dev.loopgauge.report.plot.Lanes.Group;
import dev.loopgauge.report.plot.Lanes.Part;
import dev.loopgauge.report.plot.Lanes.Row;
import dev.loopgauge.report.plot.Lanes.Segment;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.math.BigDecimal;
import java.math.MathContext;

/** One drawing of a lanes. */
final class TimelineDrawing {
  private static final double THICK = 4;
  private static final double REACH = 3;

  private final Lanes lanes;
  private final TimelineLayout layout;
  private final Graphics2D canvas;
  private final FontMetrics metrics;

  TimelineDrawing(Lanes lanes, TimelineLayout layout, Graphics2D canvas) {
    this.lanes = lanes;
    this.layout = layout;
    this.canvas = canvas;
    canvas.setFont(Charts.FONT);
    canvas.setStroke(Charts.THIN);
    this.metrics = canvas.getFontMetrics(Charts.FONT);
  }

  void draw() {
    axis();
    int top = 0;
    for (Group group : lanes.groups()) {
      text(group.name(), 0, top + 18, Ink.SOFT);
      top += TimelineLayout.HEADING;
      for (Row row : group.rows()) {
        row(row, top);
        top += layout.rowHeight();
      }
    }
    legend();
  }

  private void axis() {
    int bottom = layout.rowsHeight();
    double step = layout.tickStep();
    double first = Math.ceil(lanes.lowestMs() / step);
    for (double i = first; i * step <= lanes.highestMs() + step * 1e-6; i++) {
      double x = layout.x(i * step);
      line(x, 4, x, bottom, Ink.GRID);
      String number =
          BigDecimal.valueOf(i * step)
              .round(new MathContext(6))
              .stripTrailingZeros()
              .toPlainString();
      text(number, x - width(number) / 2, bottom + 15, Ink.TEXT);
    }
    line(layout.left(), bottom, layout.right(), bottom, Ink.QUIET);
    String unit = "milliseconds after the source";
    text(unit, (layout.left() + layout.right() - width(unit)) / 2, bottom + 32, Ink.TEXT);
  }

  private void row(Row row, int top) {
    int base = top + layout.textBelow();
    fill(Signs.of(row.sign(), 6, base - 4), Signs.ink(row.sign()));
    text(fitted(Marking.of(row.name())), TimelineLayout.SIGN, base, Ink.TEXT);
    String figure = row.figure();
    text(figure, layout.size().width() - width(figure), base, Ink.TEXT);
    double barTop = top + layout.barBelow();
    row.segments().forEach(segment -> segment(segment, barTop));
    row.measuredMs().ifPresent(ms -> measured(layout.x(ms), barTop));
    if (lanes.isShown(row.limitMs())) {
      limit(layout.x(row.limitMs().getAsDouble()), barTop);
    }
  }

  /** Air has an outline instead of a full colour, since no cable measures it. */
  private void segment(Segment segment, double top) {
    double from = layout.x(segment.fromMs());
    boolean cut = segment.toMs() > lanes.highestMs();
    double to = cut ? layout.right() - 8 : layout.x(segment.toMs()) - 1;
    bar(segment.part(), from, top, Math.max(0.5, to - from));
    if (cut) {
      arrow(to, top);
    }
  }

  /** The end of a bar that goes on beyond the picture. */
  private void arrow(double x, double top) {
    Path2D arrow = new Path2D.Double();
    arrow.moveTo(x + 2, top);
    arrow.lineTo(x + 8, top + TimelineLayout.BAR / 2.0);
    arrow.lineTo(x + 2, top + TimelineLayout.BAR);
    arrow.closePath();
    fill(arrow, Ink.AIR);
  }

  private void bar(Part part, double x, double top, double width) {
    Rectangle2D bar = new Rectangle2D.Double(x, top, width, TimelineLayout.BAR);
    if (part == Part.AIR) {
      canvas.setPaint(part.ink().veil());
      canvas.fill(bar);
      canvas.setPaint(part.ink().colour());
      canvas.draw(new Rectangle2D.Double(x + 0.5, top + 0.5, width - 1, TimelineLayout.BAR - 1));
    } else {
      fill(bar, part.ink());
    }
  }

  /** A bar through the middle with an end that stands out, on a rim of paper. */
  private void measured(double to, double top) {
    double from = layout.x(0);
    double left = Math.min(from, to);
    double middle = top + TimelineLayout.BAR / 2.0;
    double width = Math.abs(to - from);
    box(left, middle - THICK / 2 - 1, width, THICK + 2, Ink.PAPER);
    box(to - 2.5, top - REACH, 5, TimelineLayout.BAR + 2 * REACH, Ink.PAPER);
    box(left, middle - THICK / 2, width, THICK, Ink.TEXT);
    box(to - 1.5, top - REACH, 3, TimelineLayout.BAR + 2 * REACH, Ink.TEXT);
  }

  /** A thin line with a flag, which no bar must cross. */
  private void limit(double x, double top) {
    double above = top - REACH;
    box(x - 0.75, above, 1.5, TimelineLayout.BAR + 2 * REACH, Ink.BAD);
    Path2D flag = new Path2D.Double();
    flag.moveTo(x, above);
    flag.lineTo(x + 6, above + 3);
    flag.lineTo(x, above + 6);
    flag.closePath();
    fill(flag, Ink.BAD);
  }

  private void legend() {
    int place = 0;
    for (Part part : lanes.parts()) {
      int top = legend(place++, part.label());
      bar(part, legendX(place - 1), top, 18);
    }
    if (lanes.isMeasured()) {
      int top = legend(place++, "measured");
      int x = legendX(place - 1);
      box(x, top + 5, 18, THICK, Ink.TEXT);
      box(x + 15, top, 3, TimelineLayout.BAR, Ink.TEXT);
    }
    if (lanes.isLimited()) {
      int top = legend(place++, "limit");
      limit(legendX(place - 1) + 9, top + REACH);
    }
  }

  private int legend(int place, String name) {
    int line = place / (layout.size().width() / layout.legendStep());
    int top = layout.legendTop() + line * TimelineLayout.LEGEND_LINE;
    text(name, legendX(place) + 24, top + 11, Ink.TEXT);
    return top;
  }

  private int legendX(int place) {
    int perLine = layout.size().width() / layout.legendStep();
    return place % perLine * layout.legendStep();
  }

  private String fitted(String name) {
    String shown = name;
    while (shown.length() > 2 && width(shown) > layout.nameWidth()) {
      int end = shown.offsetByCodePoints(shown.length(), shown.endsWith("…") ? -2 : -1);
      shown = shown.substring(0, end) + "…";
    }
    return shown;
  }

  private double width(String text) {
    return metrics.getStringBounds(text, canvas).getWidth();
  }

  private void text(String text, double x, double y, Ink ink) {
    canvas.setPaint(ink.colour());
    canvas.drawString(text, (float) x, (float) y);
  }

  private void line(double x1, double y1, double x2, double y2, Ink ink) {
    canvas.setPaint(ink.colour());
    canvas.draw(new Line2D.Double(x1, y1, x2, y2));
  }

  private void box(double x, double y, double width, double height, Ink ink) {
    fill(new Rectangle2D.Double(x, y, width, height), ink);
  }

  private void fill(Shape shape, Ink ink) {
    canvas.setPaint(ink.colour());
    canvas.fill(shape);
  }
}
