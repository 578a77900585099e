package dev.loopgauge.report.budget;

import dev.loopgauge.report.form.Alike;
import dev.loopgauge.report.form.Excerpt;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What comes of changes, path by path. */
final class WhatIfTable {
  private static final int MOST_ROWS = 24;

  /** One path, before and after. */
  private record Change(PathRecord before, PathRecord after) {
    BigDecimal laterMs() {
      return after.delayMs().subtract(before.delayMs());
    }

    String later() {
      return Numbers.signed(laterMs().doubleValue(), 3);
    }

    /** Whether a seat hears it otherwise by more, or less, than the path itself moved. */
    boolean isHeardOtherwise() {
      return after.judgedMs().subtract(before.judgedMs()).compareTo(laterMs()) != 0;
    }

    List<Object> key() {
      return List.of(
          before.delayMs(), after.delayMs(), standing(before), standing(after), isHeardOtherwise());
    }

    private static String standing(PathRecord path) {
      return path.heard().map(standing -> standing.label()).orElse("?");
    }
  }

  private WhatIfTable() {}

  /** Tells it. */
  static void tell(List<PathRecord> before, List<PathRecord> after, Excerpt excerpt, Sheet sheet) {
    List<Change> changes = new ArrayList<>();
    int both = Math.min(before.size(), after.size());
    for (int i = 0; i < both; i++) {
      changes.add(new Change(before.get(i), after.get(i)));
    }
    table(excerpt.of(changes, MOST_ROWS, Change::key, mostMovedFirst()), sheet);
    List<Change> heard = changes.stream().filter(Change::isHeardOtherwise).toList();
    excerpt
        .of(heard, MOST_ROWS, WhatIfTable::heard, mostMovedFirst())
        .shown()
        .forEach(
            row ->
                sheet.row(
                    "heard",
                    row.names(change -> change.after().name()) + ": " + heard(row.first())));
    sheet.gap();
  }

  private static Comparator<Change> mostMovedFirst() {
    return Comparator.comparing((Change change) -> change.laterMs().abs()).reversed();
  }

  private static void table(Excerpt.Part<Change> part, Sheet sheet) {
    Table<Alike<Change>> table =
        new Table<Alike<Change>>().words("path", row -> row.first().after().name());
    if (part.isGrouped()) {
      table.figures("alike", Alike::more);
    }
    table
        .figures("ms now", row -> ms(row.first().before().delayMs()))
        .figures("then", row -> ms(row.first().after().delayMs()))
        .figures("later", row -> row.first().later())
        .words("standing now", row -> Change.standing(row.first().before()))
        .words("then", row -> Change.standing(row.first().after()))
        .tell(part.shown(), sheet);
    if (part.hidden() > 0) {
      sheet.line("  and " + part.hidden() + " paths more");
    }
  }

  private static String heard(Change change) {
    return told(change.before()) + " now, then " + told(change.after());
  }

  private static String told(PathRecord path) {
    return path.judged().map(JudgedRecord::told).orElseGet(() -> Numbers.inMs(path.judgedMs(), 1));
  }

  private static String ms(BigDecimal ms) {
    return Numbers.plain(ms.doubleValue(), 3);
  }
}
