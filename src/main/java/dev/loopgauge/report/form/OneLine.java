package dev.loopgauge.report.form;

/** What somebody typed, such as names and notes, fit for lines of a screen. */
public final class OneLine {
  /** Controls, halves of characters, and what turns or breaks lines. */
  private static final String UNSHOWN = "[\\p{Cc}\\p{Cs}\\p{Cf}\\p{Zl}\\p{Zp}]";

  private OneLine() {}

  /** The text on one line; what can't be shown is a question mark. */
  public static String line(String text) {
    return text.replaceAll("\\R", " ").replaceAll(UNSHOWN, "?");
  }

  /** The same, cut to this many characters. */
  public static String brief(String text, int most) {
    String line = line(text);
    return line.codePointCount(0, line.length()) <= most
        ? line
        : line.substring(0, line.offsetByCodePoints(0, most - 3)) + "...";
  }
}
