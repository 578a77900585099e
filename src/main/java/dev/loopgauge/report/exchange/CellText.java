package dev.loopgauge.report.exchange;

import dev.loopgauge.report.form.Csv;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Texts as cells of a CSV file in UTF-8, which can't hold halves of surrogate pairs, and whose
 * readers differ on NUL, line ends and empty cells. These are written as {@code \}{@code uXXXX},
 * {@code \n}, {@code \r} and {@code \e} for a text that is there but empty; a backslash as two.
 * What a spreadsheet would run as a formula gets a backslash before it. All else stays as it is.
 */
final class CellText {
  private static final Pattern WRITTEN =
      Pattern.compile("\\\\(?:u[0-9a-f]{4}|[\\\\nre]|[=+\\-@\t\uFF1D\uFF0B\uFF0D\uFF20])");
  private static final Pattern SPECIAL = Pattern.compile("[\\\\\\n\\r\\x00\\p{Cs}]");

  private CellText() {}

  /** The cell of a text. */
  static String cell(String text) {
    if (text.isEmpty()) {
      return "\\e";
    }
    String escaped = escaped(text);
    return Csv.isFormula(escaped) ? "\\" + escaped : escaped;
  }

  private static String escaped(String text) {
    return SPECIAL
        .matcher(text)
        .replaceAll(found -> Matcher.quoteReplacement(escape(found.group().charAt(0))));
  }

  private static String escape(char c) {
    return switch (c) {
      case '\\' -> "\\\\";
      case '\n' -> "\\n";
      case '\r' -> "\\r";
      default -> "\\u%04x".formatted((int) c);
    };
  }

  /** The text of a cell that is not empty. */
  static String text(String cell) {
    return WRITTEN.matcher(cell).replaceAll(found -> Matcher.quoteReplacement(read(found)));
  }

  private static String read(MatchResult found) {
    String escape = found.group();
    return switch (escape.charAt(1)) {
      case 'u' -> String.valueOf((char) Integer.parseInt(escape.substring(2), 16));
      case 'n' -> "\n";
      case 'r' -> "\r";
      case 'e' -> "";
      default -> escape.substring(1);
    };
  }
}
