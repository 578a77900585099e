package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.report.form.Alike;
import dev.loopgauge.report.form.Excerpt;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The paths of a budget, a line each. */
final class PathTable {
  /** The most lines: about a screen. */
  private static final int MOST_ROWS = 24;

  /** What two paths that are told in one line have in common. */
  private record Key(
      Optional<Listener> listener,
      Optional<BigDecimal> delaySamples,
      Optional<BigDecimal> toleranceSamples,
      String standing) {
    static Key of(PathRecord path) {
      return new Key(path.listener(), path.delaySamples(), path.toleranceSamples(), path.inWords());
    }
  }

  private PathTable() {}

  /** The worst first: over, caution, within; of those over the furthest. */
  static Comparator<PathRecord> worstFirst() {
    return PathTable::compare;
  }

  private static int compare(PathRecord one, PathRecord other) {
    int standing = heard(other).compareTo(heard(one));
    return standing != 0 ? standing : excess(other).compareTo(excess(one));
  }

  private static Standing heard(PathRecord path) {
    return path.heard().orElse(Standing.WITHIN);
  }

  private static BigDecimal excess(PathRecord path) {
    return heard(path) == Standing.OVER && path.limitMs().isPresent()
        ? path.judgedMs().subtract(path.limitMs().get())
        : BigDecimal.ZERO;
  }

  /** Tells them. */
  static void tell(List<PathRecord> paths, Excerpt excerpt, Sheet sheet) {
    Excerpt.Part<PathRecord> part = excerpt.of(paths, MOST_ROWS, Key::of, worstFirst());
    if (part.isGrouped() || part.hidden() > 0) {
      sheet.line(counts(paths)).gap();
    }
    Table<Alike<PathRecord>> table =
        new Table<Alike<PathRecord>>().words("path", row -> row.first().name());
    if (part.isGrouped()) {
      table.figures("alike", Alike::more);
    }
    table
        .words("listener", row -> listener(row.first()))
        .figures("ms", row -> Numbers.plain(row.first().delayMs().doubleValue(), 3))
        .figures("samples", row -> plain(row.first().delaySamples(), 1))
        .figures("±", row -> brief(row.first().toleranceSamples()))
        .figures("metres", row -> plain(row.first().equivalentMetres(), 2))
        .ifRoom()
        .figures("feet", row -> plain(row.first().equivalentFeet(), 1))
        .ifRoom()
        .words("standing", row -> row.first().inWords())
        .tell(part.shown(), sheet);
    if (part.hidden() > 0) {
      sheet.line("  and " + part.hidden() + " paths more");
    }
    sheet.gap();
  }

  private static String counts(List<PathRecord> paths) {
    return "%d paths: %d over, %d caution, %d within."
        .formatted(
            paths.size(),
            count(paths, Standing.OVER),
            count(paths, Standing.CAUTION),
            count(paths, Standing.WITHIN));
  }

  private static long count(List<PathRecord> paths, Standing standing) {
    return paths.stream().filter(path -> path.heard().orElse(null) == standing).count();
  }

  /** Who hears a path. */
  static String listener(PathRecord path) {
    return path.listener().isPresent() ? path.listener().get().label() : "?";
  }

  private static String plain(Optional<BigDecimal> number, int decimals) {
    return number.isPresent() ? Numbers.plain(number.get().doubleValue(), decimals) : "-";
  }

  private static String brief(Optional<BigDecimal> number) {
    return number.isPresent() ? Numbers.brief(number.get().doubleValue(), 2) : "-";
  }
}
