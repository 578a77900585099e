package dev.loopgauge.report.planned;

import dev.loopgauge.plan.AlignedPath;
import dev.loopgauge.plan.DeskStep;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.report.planned.AlignmentDocument.AlignedRecord;
import dev.loopgauge.report.planned.AlignmentDocument.ConflictRecord;
import dev.loopgauge.report.planned.AlignmentDocument.MixRecord;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * The alignment as text: whether it works out, one table for the desk (not where it was written to
 * a file), then what is left.
 */
final class AlignmentText {
  private static final int FINEST_SAMPLE_DECIMALS = 2;

  /** A null beyond it tells of the rounding of arithmetic, and of nothing else. */
  private static final int HIGHEST_SHOWN_HZ = 1_000_000;

  /** The highest frequency that people hear, in Hz: common practice, no source. */
  private static final int HIGHEST_HEARD_HZ = 20_000;

  private static final String HELD = AlignedPath.Part.HELD.label();

  /** A line of the table. */
  private record Row(String mix, AlignedRecord path) {}

  private final Sheet sheet = new Sheet();
  private final AlignmentDocument document;

  private AlignmentText(AlignmentDocument document) {
    this.document = document;
  }

  /** The text. */
  static String of(AlignmentDocument document) {
    AlignmentText text = new AlignmentText(document);
    text.headline();
    text.sheet.gap();
    if (document.csvFile().isEmpty()) {
      text.table();
      text.sheet.gap();
    }
    document.mixes().forEach(text::meeting);
    document.mixes().forEach(text::unknown);
    document.mixes().forEach(mix -> mix.paths().forEach(text::limit));
    document.csvFile().ifPresent(file -> text.sheet.row("written", file));
    return text.sheet.toString();
  }

  private void headline() {
    if (document.conflicts().isEmpty()) {
      sheet.line(
          switch (document.outcome()) {
            case AlignmentDocument.ALIGNED ->
                document.mixes().stream().allMatch(mix -> targets(mix).isEmpty())
                    ? "NOTHING TO ALIGN: no two paths that may be delayed carry one input."
                    : "SET " + those() + ": then the paths of each mix meet.";
            case AlignmentDocument.BEYOND_DESK ->
                "BEYOND THE DESK: it can't delay every path by as much as it needs.";
            default ->
                "OVER A LIMIT: " + those() + " make the paths meet, but too late for a performer.";
          });
    }
    document.conflicts().forEach(this::conflict);
  }

  private String those() {
    return document.csvFile().map(file -> "the delays in " + file).orElse("these delays");
  }

  private void conflict(ConflictRecord conflict) {
    BigDecimal more = conflict.addSamples().subtract(conflict.otherAddSamples());
    Optional<BigDecimal> moreMs =
        conflict.addMs().flatMap(ms -> conflict.otherAddMs().map(ms::subtract));
    sheet.line(
        "CONFLICT: "
            + (conflict.path() + " needs " + inWords(conflict.addSamples(), conflict.addMs()))
            + (" in " + conflict.mix() + " but ")
            + inWords(conflict.otherAddSamples(), conflict.otherAddMs())
            + (" in " + conflict.otherMix() + "."));
    sheet.row(
        "try",
        "set it where each mix is made, if the desk can; or set the larger one and add "
            + (inWords(more, moreMs) + " more to the others of " + conflict.otherMix()));
  }

  private void table() {
    List<Row> rows =
        document.mixes().stream()
            .flatMap(mix -> mix.paths().stream().map(path -> new Row(mix.name(), path)))
            .toList();
    Table<Row> table = new Table<Row>().words("mix", Row::mix).words("path", r -> r.path().path());
    if (rows.stream()
        .anyMatch(row -> row.path().offsetMs().filter(ms -> ms.signum() > 0).isPresent())) {
      table.figures(
          "behind",
          r -> r.path().offsetMs().map(ms -> Numbers.brief(ms.doubleValue(), 2)).orElse("-"));
    }
    table
        .figures("samples", row -> samples(row.path().addSamples()))
        .figures("ms", row -> Numbers.plain(row.path().addMs().doubleValue(), 3));
    length(table, "metres", " m", row -> plain(row.path().addMetres()));
    length(table, "feet", " ft", row -> plain(row.path().addFeet()));
    table.words("from", row -> row.path().source().orElse("-")).tell(rows, sheet);
  }

  /** Needed where the desk sets delays in that unit, good to have elsewhere. */
  private void length(Table<Row> table, String unit, String step, Function<Row, String> cell) {
    table.figures(unit, cell);
    if (document.step().filter(label -> label.endsWith(step)).isEmpty()) {
      table.ifRoom();
    }
  }

  private void meeting(MixRecord mix) {
    sheet.row(mix.name(), meet(mix));
    names(mix, path -> path.part().filter(HELD::equals).isPresent())
        .ifPresent(held -> sheet.row("left alone", held + ": in-ears and wedges are not delayed"));
    mix.paths().stream()
        .filter(path -> path.beyondDesk().orElse(false))
        .forEach(path -> sheet.row("too early", path.path() + ": " + lacking(path)));
    names(mix, path -> path.outsideBudget().orElse(false))
        .ifPresent(
            outside ->
                sheet.row(
                    "check",
                    outside
                        + ": measured outside the budget. Find out why before you set delays."));
  }

  private String meet(MixRecord mix) {
    String met = String.join(", ", targets(mix));
    return met.isEmpty()
        ? "nothing to align: no two of its paths that may be delayed carry one input"
        : "all meet " + met + ". " + rounding(mix);
  }

  /** Documents from before paths were aligned by their inputs name one for the whole mix. */
  private static List<String> targets(MixRecord mix) {
    List<String> met =
        mix.paths().stream().flatMap(path -> path.meets().stream()).distinct().toList();
    return met.isEmpty() ? mix.target().stream().toList() : met;
  }

  private static Optional<String> names(MixRecord mix, Predicate<AlignedRecord> those) {
    List<String> names = mix.paths().stream().filter(those).map(AlignedRecord::path).toList();
    return names.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", names));
  }

  private String rounding(MixRecord mix) {
    double hz = mix.firstNullHz().map(BigDecimal::doubleValue).orElse(Double.POSITIVE_INFINITY);
    Optional<BigDecimal> leaves = halfPeriod(hz);
    if (hz >= HIGHEST_SHOWN_HZ || leaves.isEmpty()) {
      return "Rounding leaves nothing.";
    }
    String step = document.step().orElse("?");
    return "Rounding to "
        + (step.equals(DeskStep.SAMPLE.label()) ? "whole samples" : "steps of " + step)
        + (" leaves " + Numbers.plain(leaves.get().doubleValue(), 3) + " ms: ")
        + (hz > HIGHEST_HEARD_HZ
            ? "inaudible."
            : "combs from " + Numbers.brief(hz / 1000, 1) + " kHz.");
  }

  /**
   * Two copies cancel first where they are half a period apart; in ms. Empty where a document holds
   * a frequency that none can have.
   */
  private static Optional<BigDecimal> halfPeriod(double hz) {
    double ms = 500 / hz;
    return hz > 0 && Double.isFinite(ms) ? Optional.of(BigDecimal.valueOf(ms)) : Optional.empty();
  }

  private static String lacking(AlignedRecord path) {
    return path.firstNullHz()
        .flatMap(hz -> halfPeriod(hz.doubleValue()))
        .map(
            ms ->
                "needs "
                    + Numbers.inMs(path.addMs().add(ms), 1)
                    + (", " + Numbers.inMs(ms, 1) + " more than the desk can set"))
        .orElse("needs a longer delay than the desk can set");
  }

  private void unknown(MixRecord mix) {
    if (!mix.unknownCompensation().isEmpty()) {
      sheet.row(
          "unknown",
          "does the desk delay the rest of "
              + (mix.name() + " to match " + String.join(", ", mix.unknownCompensation()))
              + "? If so, other delays are needed; measure the paths and give --measured");
    }
  }

  private void limit(AlignedRecord path) {
    if (path.passesLimit().orElse(false)) {
      String then =
          path.delayMs()
              .map(ms -> Numbers.plain(ms.add(path.addMs()).doubleValue(), 1) + " ms late, over")
              .orElse("over");
      String limit =
          path.limitMs().map(ms -> " of " + Numbers.brief(ms.doubleValue(), 2) + " ms").orElse("");
      String source = path.limitSource().map(rule -> " (" + rule + ")").orElse("");
      sheet.row("over", path.path() + " is then " + then + " its limit" + limit + source);
    }
  }

  private static String inWords(BigDecimal samples, Optional<BigDecimal> ms) {
    String inMs = ms.map(known -> " (" + Numbers.plain(known.doubleValue(), 3) + " ms)").orElse("");
    return samples(samples) + " samples" + inMs;
  }

  private static String samples(BigDecimal samples) {
    return Numbers.brief(samples.doubleValue(), FINEST_SAMPLE_DECIMALS);
  }

  private static String plain(Optional<BigDecimal> number) {
    return number.map(known -> Numbers.plain(known.doubleValue(), 2)).orElse("-");
  }
}
