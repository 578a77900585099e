package dev.loopgauge.report.form;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Rows that say the same.
 *
 * @param rows they, in the order of the document, at least one
 */
public record Alike<T>(List<T> rows) {
  private static final int MOST_NAMES = 3;

  /** Copies the rows. */
  public Alike {
    rows = List.copyOf(rows);
  }

  /** The row that stands for all. */
  public T first() {
    return rows.get(0);
  }

  /** How many more there are: {@code +49}; nothing for a row by itself. */
  public String more() {
    return rows.size() == 1 ? "" : "+" + (rows.size() - 1);
  }

  /** Their names: {@code a, b}, or {@code a, b and 7 more}. */
  public String names(Function<T, String> name) {
    List<String> names = new ArrayList<>();
    for (T row : rows) {
      names.add(name.apply(row));
    }
    if (names.size() <= MOST_NAMES) {
      return String.join(", ", names);
    }
    int shown = MOST_NAMES - 1;
    return String.join(", ", names.subList(0, shown)) + " and " + (names.size() - shown) + " more";
  }
}
