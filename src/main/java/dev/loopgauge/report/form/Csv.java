package dev.loopgauge.report.form;

import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Lines of tables for spreadsheets (RFC 4180). */
public final class Csv {
  private static final String NEWLINE = "\r\n";

  private Csv() {}

  /** One line with its end; null is an empty cell. */
  public static String line(Stream<?> cells) {
    return cells.map(cell -> quoted(Objects.toString(cell, ""))).collect(Collectors.joining(","))
        + NEWLINE;
  }

  private static String quoted(String cell) {
    return cell.matches("[^\",\\r\\n]*") ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }
}
