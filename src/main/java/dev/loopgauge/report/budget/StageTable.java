package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Listener;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One path, stage by stage. */
final class StageTable {
  private StageTable() {}

  /** Tells it. */
  static void tell(PathRecord path, Sheet sheet) {
    sheet.line(path.name() + ", " + PathTable.listener(path) + ": " + path.inWords());
    new Table<StageRecord>()
        .words("stage", StageRecord::name)
        .figures("ms", row -> plain(row.delayMs(), 3))
        .figures("samples", row -> plain(row.delaySamples(), 1))
        .figures("±", row -> brief(row.toleranceSamples()))
        .tell(rows(path), sheet);
    sheet.line("As if " + speaker(path) + " stood " + distance(path) + " further away.");
    sheet.gap();
  }

  private static List<StageRecord> rows(PathRecord path) {
    List<StageRecord> rows = new ArrayList<>(path.stages());
    rows.add(
        new StageRecord(
            "(whole path)",
            path.delaySamples(),
            Optional.of(path.delayMs()),
            path.toleranceSamples()));
    rows.add(
        new StageRecord(
            "(loop by cable)", path.loopSamples(), path.loopMs(), path.loopToleranceSamples()));
    return rows;
  }

  private static String speaker(PathRecord path) {
    return switch (path.listener().orElse(Listener.STREAM)) {
      case WEDGE -> "the wedge";
      case HOUSE -> "the loudspeakers";
      case IN_EAR, STREAM -> "the source";
    };
  }

  private static String distance(PathRecord path) {
    return "%s m (%s ft)"
        .formatted(plain(path.equivalentMetres(), 2), plain(path.equivalentFeet(), 1));
  }

  private static String plain(Optional<BigDecimal> number, int decimals) {
    return number.isPresent() ? Numbers.plain(number.get().doubleValue(), decimals) : "-";
  }

  private static String brief(Optional<BigDecimal> number) {
    return number.isPresent() ? Numbers.brief(number.get().doubleValue(), 2) : "-";
  }
}
