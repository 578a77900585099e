package dev.loopgauge.report.form;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * What of long lists is told: rows that say the same as one, the worst first, up to a number. Lists
 * that are short enough, and all lists of a full text, are told row by row in their own order.
 */
public final class Excerpt {
  private final boolean full;
  private boolean shortened;

  private Excerpt(boolean full) {
    this.full = full;
  }

  /** Of a text that is to tell everything, or not. */
  public static Excerpt of(boolean full) {
    return new Excerpt(full);
  }

  /**
   * What is told of a list.
   *
   * @param shown the rows
   * @param hidden how many rows of the list are not among them
   */
  public record Part<T>(List<Alike<T>> shown, int hidden) {
    /** Copies the rows. */
    public Part {
      shown = List.copyOf(shown);
    }

    /** Whether any row stands for several. */
    public boolean isGrouped() {
      for (Alike<T> alike : shown) {
        if (alike.rows().size() > 1) {
          return true;
        }
      }
      return false;
    }

    /** Of rows that all say something else. */
    private static <T> Part<T> each(List<T> rows) {
      List<Alike<T>> alone = new ArrayList<>();
      for (T row : rows) {
        alone.add(new Alike<>(List.of(row)));
      }
      return new Part<>(alone, 0);
    }
  }

  /**
   * What to tell of a list.
   *
   * @param most the most rows to tell
   * @param key what rows say; those of one key are told as one
   * @param worst the worst first
   */
  public <T> Part<T> of(List<T> all, int most, Function<T, ?> key, Comparator<T> worst) {
    if (full || all.size() <= most) {
      return Part.each(all);
    }
    return of(all.stream().sorted(worst).toList(), most, key);
  }

  /** The same of a list that is to keep its order. */
  public <T> Part<T> of(List<T> all, int most, Function<T, ?> key) {
    if (full || all.size() <= most) {
      return Part.each(all);
    }
    shortened = true;
    Map<Object, List<T>> groups = new LinkedHashMap<>();
    all.forEach(row -> groups.computeIfAbsent(key.apply(row), k -> new ArrayList<>()).add(row));
    List<Alike<T>> shown = groups.values().stream().limit(most).map(Alike::new).toList();
    int told = shown.stream().mapToInt(alike -> alike.rows().size()).sum();
    return new Part<>(shown, all.size() - told);
  }

  /** Whether any list was told in part. */
  public boolean isShortened() {
    return shortened;
  }
}
