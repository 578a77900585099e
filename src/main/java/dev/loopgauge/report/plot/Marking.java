package dev.loopgauge.report.plot;

import java.util.regex.Pattern;

/** Names as they can stand in a plot: short, on one line, and in no more than one direction. */
final class Marking {
  private static final int MOST = 24;
  private static final Pattern UNSEEN = Pattern.compile("[\\p{Cc}\\p{Cf}\\p{Cs}\\p{Co}\\p{Cn}]+");

  private Marking() {}

  /** At most 24 characters; the whole name stands in the table below the plot. */
  static String of(String name) {
    String plain = UNSEEN.matcher(name).replaceAll(" ").strip();
    return plain.codePointCount(0, plain.length()) <= MOST
        ? plain
        : plain.substring(0, plain.offsetByCodePoints(0, MOST - 1)) + "…";
  }
}
