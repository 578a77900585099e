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
  private static final int SCREEN_COLUMNS = 80;

  private record Column<T>(
      String header, boolean figures, boolean ifRoom, Function<T, String> cell) {
    int width(List<T> rows) {
      int widest = Table.width(header);
      for (T row : rows) {
        widest = Math.max(widest, Table.width(cell.apply(row)));
      }
      return widest;
    }
  }

  private final List<Column<T>> columns = new ArrayList<>();

  /** Adds a column of words. */
  public Table<T> words(String header, Function<T, String> cell) {
    columns.add(new Column<>(header, false, false, cell));
    return this;
  }

  /** Adds a column of figures. */
  public Table<T> figures(String header, Function<T, String> cell) {
    columns.add(new Column<>(header, true, false, cell));
    return this;
  }

  /**
   * Leaves the last column out where lines are wider than a screen of 80; the latest goes first.
   */
  public Table<T> ifRoom() {
    Column<T> last = columns.remove(columns.size() - 1);
    columns.add(new Column<>(last.header(), last.figures(), true, last.cell()));
    return this;
  }

  /** Writes the header and the rows on a sheet. */
  public void tell(List<T> rows, Sheet sheet) {
    for (String line : lines(rows)) {
      sheet.asIs(line);
    }
  }

  /** The header and the rows as lines. */
  public List<String> lines(List<T> rows) {
    StringBuilder[] lines = new StringBuilder[rows.size() + 1];
    for (int i = 0; i < lines.length; i++) {
      lines[i] = new StringBuilder();
    }
    for (Column<T> column : fitting(rows)) {
      append(column, rows, lines);
    }
    List<String> told = new ArrayList<>();
    for (StringBuilder line : lines) {
      told.add(line.toString().stripTrailing());
    }
    return told;
  }

  private List<Column<T>> fitting(List<T> rows) {
    List<Column<T>> kept = new ArrayList<>(columns);
    for (int i = columns.size() - 1; i >= 0 && isWide(kept, rows); i--) {
      if (columns.get(i).ifRoom()) {
        kept.remove(i);
      }
    }
    return kept;
  }

  private boolean isWide(List<Column<T>> kept, List<T> rows) {
    int width = 0;
    for (Column<T> column : kept) {
      width += 2 + column.width(rows);
    }
    return width > SCREEN_COLUMNS;
  }

  private void append(Column<T> column, List<T> rows, StringBuilder[] lines) {
    List<String> cells = new ArrayList<>(List.of(column.header()));
    for (T row : rows) {
      cells.add(column.cell().apply(row));
    }
    int width = column.width(rows);
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
