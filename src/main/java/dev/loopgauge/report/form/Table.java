package dev.loopgauge.report.form;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Columns without borders: words to the left, figures to the right, two spaces between.
 *
 * @param <T> what a row tells of
 */
public final class Table<T> {
  private record Column<T>(String header, boolean figures, Function<T, String> cell) {}

  private final List<Column<T>> columns = new ArrayList<>();

  /** Adds a column of words. */
  public Table<T> words(String header, Function<T, String> cell) {
    columns.add(new Column<>(header, false, cell));
    return this;
  }

  /** Adds a column of figures. */
  public Table<T> figures(String header, Function<T, String> cell) {
    columns.add(new Column<>(header, true, cell));
    return this;
  }

  /** The header and the rows as lines. */
  public List<String> lines(List<T> rows) {
    StringBuilder[] lines = new StringBuilder[rows.size() + 1];
    for (int i = 0; i < lines.length; i++) {
      lines[i] = new StringBuilder();
    }
    columns.forEach(column -> append(column, rows, lines));
    return List.of(lines).stream().map(line -> line.toString().stripTrailing()).toList();
  }

  private void append(Column<T> column, List<T> rows, StringBuilder[] lines) {
    List<String> cells = new ArrayList<>(List.of(column.header()));
    rows.forEach(row -> cells.add(column.cell().apply(row)));
    int width = cells.stream().mapToInt(Table::width).max().orElse(0);
    for (int i = 0; i < lines.length; i++) {
      String gap = " ".repeat(width - width(cells.get(i)));
      String cell = column.figures() ? gap + cells.get(i) : cells.get(i) + gap;
      lines[i].append("  ").append(cell);
    }
  }

  private static int width(String text) {
    return text.codePointCount(0, text.length());
  }
}
