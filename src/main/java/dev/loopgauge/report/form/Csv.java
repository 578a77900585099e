package dev.loopgauge.report.form;

import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Lines of tables for spreadsheets (RFC 4180). A text that a spreadsheet would run as a formula
 * (OWASP, "CSV Injection": one that begins with {@code = + - @}, a tab, or their wide forms) gets
 * an apostrophe before it; numbers stay as they are.
 */
public final class Csv {
  private static final String NEWLINE = "\r\n";

  private static final Pattern FORMULA =
      Pattern.compile("[=+\\-@\\t\\r\uFF1D\uFF0B\uFF0D\uFF20].+", Pattern.DOTALL);

  private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]+(?:\\.[0-9]+)?");

  private Csv() {}

  /** One line with its end; null is an empty cell. */
  public static String line(Stream<?> cells) {
    return cells.map(cell -> quoted(Objects.toString(cell, ""))).collect(Collectors.joining(","))
        + NEWLINE;
  }

  private static String quoted(String text) {
    String cell = isFormula(text) ? "'" + text : text;
    return cell.matches("[^\",\\r\\n]*") ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }

  /** Whether a spreadsheet would run a text. */
  public static boolean isFormula(String text) {
    return FORMULA.matcher(text).matches() && !NUMBER.matcher(text).matches();
  }
}
