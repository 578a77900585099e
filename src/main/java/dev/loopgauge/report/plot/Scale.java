package dev.loopgauge.report.plot;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/**
 * An axis of numbers, plain in every locale, that has no ticks beyond what is plotted, or has names
 * in place of numbers.
 */
final class Scale extends NumberAxis {
  private static final long serialVersionUID = 1L;
  private static final int GAP = 8;

  private final double highestTick;
  private final transient SortedMap<Double, String> names;

  private Scale(String label, double highestTick, SortedMap<Double, String> names) {
    super(label.isEmpty() ? null : label);
    this.highestTick = highestTick;
    this.names = names;
    setStandardTickUnits(NumberAxis.createStandardTickUnits(Locale.ROOT));
    setNumberFormatOverride(
        new DecimalFormat("0.######", DecimalFormatSymbols.getInstance(Locale.ROOT)));
    Charts.plain(this);
  }

  /** An axis of numbers; above {@code highest} there is room for text alone. */
  static Scale upTo(String label, double highest) {
    return new Scale(label, highest, Collections.emptySortedMap());
  }

  /** An axis with a name at some of its values; names that would touch are left out. */
  static Scale named(String label, SortedMap<Double, String> names) {
    return new Scale(label, Double.POSITIVE_INFINITY, names);
  }

  @Override
  @SuppressWarnings("rawtypes") // as the library declares it
  public List refreshTicks(
      Graphics2D g2, AxisState state, Rectangle2D dataArea, RectangleEdge edge) {
    if (!names.isEmpty()) {
      return namedTicks(g2, dataArea, edge);
    }
    List<NumberTick> ticks = new ArrayList<>();
    for (Object tick : super.refreshTicks(g2, state, dataArea, edge)) {
      if (tick instanceof NumberTick number && number.getValue() <= highestTick) {
        ticks.add(number);
      }
    }
    return ticks;
  }

  private List<NumberTick> namedTicks(Graphics2D g2, Rectangle2D dataArea, RectangleEdge edge) {
    List<NumberTick> ticks = new ArrayList<>();
    double free = Double.NEGATIVE_INFINITY;
    for (var name : names.entrySet()) {
      double half =
          g2.getFontMetrics(Charts.FONT).getStringBounds(name.getValue(), g2).getWidth() / 2;
      double at = valueToJava2D(name.getKey(), dataArea, edge);
      boolean fits = at - half >= free;
      if (fits) {
        free = at + half + GAP;
      }
      ticks.add(
          new NumberTick(
              name.getKey(),
              fits ? name.getValue() : "",
              TextAnchor.TOP_CENTER,
              TextAnchor.CENTER,
              0));
    }
    return ticks;
  }
}
