package dev.loopgauge.report.exchange;

import dev.loopgauge.signal.HintedException;

/** A file is no export of a journal. The message says where, what was expected and what found. */
public final class ExchangeException extends HintedException {
  private static final long serialVersionUID = 1L;

  /** The hint for a file of another kind. */
  static final String FOREIGN = "give a file that `loopgauge journal export` wrote";

  /** The hint for a file that lacks its end. */
  static final String CUT = "it was cut off: copy or export it again";

  private static final int LONGEST_FOUND = 40;

  ExchangeException(String file, long line, String expected, String found, String hint) {
    super(
        "wrong-arguments",
        "%s:%d: expected %s, found %s".formatted(file, line, expected, found),
        hint);
  }

  /** What stands in a file, on one line and not too long. */
  static String shown(Object value) {
    if (value == null) {
      return "nothing";
    }
    String text = value.toString().replaceAll("[\\p{Cc}\\p{Cs}\\p{Cf}\\p{Zl}\\p{Zp}]", "?");
    boolean fits = text.codePointCount(0, text.length()) <= LONGEST_FOUND;
    return fits
        ? "'" + text + "'"
        : "'" + text.substring(0, text.offsetByCodePoints(0, LONGEST_FOUND)) + "...'";
  }
}
