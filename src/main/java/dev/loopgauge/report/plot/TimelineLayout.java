package dev.loopgauge.report.plot;

import dev.loopgauge.report.plot.Lanes.Group;

/**
 * Where things stand in a timeline, in CSS pixels: beside the bars on a wide page, above them on a
 * phone.
 */
record TimelineLayout(Lanes lanes, Size size) {
  static final int BAR = 14;
  static final int HEADING = 26;
  static final int LEGEND_LINE = 20;
  static final int SIGN = 16;

  private static final int AXIS = 42;
  private static final int NAMES = 190;
  private static final int FIGURES = 76;
  private static final int ASIDE = 14;

  boolean isWide() {
    return size == Size.WIDE;
  }

  int rowHeight() {
    return isWide() ? 24 : 40;
  }

  /** Where the bar of a row begins below the row's top. */
  int barBelow() {
    return isWide() ? 5 : 20;
  }

  /** The base line of a row's text below the row's top. */
  int textBelow() {
    return isWide() ? 16 : 14;
  }

  int left() {
    return isWide() ? NAMES : ASIDE;
  }

  int right() {
    return size.width() - (isWide() ? FIGURES : ASIDE);
  }

  /** How wide a name may be. */
  int nameWidth() {
    return (isWide() ? NAMES : size.width() - FIGURES) - SIGN - 6;
  }

  double x(double ms) {
    double span = lanes.highestMs() - lanes.lowestMs();
    return left() + (ms - lanes.lowestMs()) / span * (right() - left());
  }

  /** The end of the rows. */
  int rowsHeight() {
    int height = 0;
    for (Group group : lanes.groups()) {
      height += HEADING + group.rows().size() * rowHeight();
    }
    return height + 4;
  }

  /** Where the legend begins. */
  int legendTop() {
    return rowsHeight() + AXIS;
  }

  int height() {
    int entries = lanes.parts().size() + 2;
    int perLine = isWide() ? 5 : 2;
    return legendTop() + (entries + perLine - 1) / perLine * LEGEND_LINE + 4;
  }

  /** How far apart the places of the legend are. */
  int legendStep() {
    return (size.width() - 8) / (isWide() ? 5 : 2);
  }

  /** The step between ticks: 1, 2 or 5 times a power of ten, with room for the numbers. */
  double tickStep() {
    double least = (lanes.highestMs() - lanes.lowestMs()) * 48 / (right() - left());
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    for (double step : new double[] {1, 2, 5}) {
      if (step * power >= least) {
        return step * power;
      }
    }
    return 10 * power;
  }
}
