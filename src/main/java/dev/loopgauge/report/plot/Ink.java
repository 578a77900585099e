package dev.loopgauge.report.plot;

import java.awt.Color;
import java.util.Arrays;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * The colours of the plots. Each stands for a CSS custom property, which the page sets for light
 * and dark; while a plot is drawn, a colour that nothing else uses holds its place.
 */
enum Ink {
  TEXT(0),
  QUIET(1),
  GRID(2),
  PAPER(3),
  PLANNED(4),
  MEASURED(5),
  OTHER(6),
  SOFT(7),
  GOOD(8),
  UNDECIDED(9),
  BAD(10),
  CONVERTER(11),
  CONSOLE(12),
  HOST(13),
  NETWORK(14),
  AIR(15);

  private static final Pattern PLACEHOLDER = Pattern.compile("rgb\\(1,2,(\\d+)\\)");
  private static final int VEIL_ALPHA = 48;

  private final int number;

  Ink(int number) {
    this.number = number;
  }

  /** What is drawn with. */
  Color colour() {
    return new Color(1, 2, number);
  }

  /** The same, letting through what lies behind. */
  Color veil() {
    return new Color(1, 2, number, VEIL_ALPHA);
  }

  /** Puts the custom properties into a drawn plot. */
  static String intoCss(String svg) {
    return PLACEHOLDER.matcher(svg).replaceAll(found -> property(found.group(1)));
  }

  private static String property(String number) {
    return Arrays.stream(values())
        .filter(ink -> ink.number == Integer.parseInt(number))
        .map(ink -> "var(--" + ink.name().toLowerCase(Locale.ROOT) + ")")
        .findFirst()
        .orElseThrow();
  }
}
