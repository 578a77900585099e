package dev.loopgauge.report.planned;

import dev.loopgauge.chain.ListenerLimits;
import dev.loopgauge.plan.AlignedMix;
import dev.loopgauge.plan.AlignedPath;
import dev.loopgauge.plan.Conflict;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.signal.Latency;
import java.util.List;
import java.util.OptionalDouble;

/** The alignment as text: whether it works out, one table for the desk, then what is left. */
final class AlignmentText {
  private static final int FINEST_SAMPLE_DECIMALS = 2;

  /** A null beyond it tells of the rounding of arithmetic, and of nothing else. */
  private static final int HIGHEST_SHOWN_HZ = 1_000_000;

  /** A line of the table. */
  private record Row(String mix, AlignedPath path) {}

  private final Sheet sheet = new Sheet();
  private final AlignmentDocument document;

  AlignmentText(AlignmentDocument document) {
    this.document = document;
    headline();
    sheet.gap();
    table();
    sheet.gap();
    List<AlignedMix> mixes = document.alignment().mixes();
    mixes.forEach(this::meeting);
    mixes.forEach(this::unknown);
    mixes.forEach(mix -> mix.paths().forEach(this::limit));
    document.csvFile().ifPresent(file -> sheet.row("written", file));
  }

  private void headline() {
    List<Conflict> conflicts = document.alignment().conflicts();
    if (conflicts.isEmpty()) {
      sheet.line(
          document.alignment().passesLimit()
              ? "OVER A LIMIT: these delays make the paths meet, but too late for a performer."
              : "SET these delays: then the paths of each mix meet.");
    }
    conflicts.forEach(this::conflict);
  }

  private void conflict(Conflict conflict) {
    sheet.line(
        "CONFLICT: "
            + (conflict.path() + " needs " + inWords(conflict.add()))
            + (" in " + conflict.larger() + " but " + inWords(conflict.otherAdd()))
            + (" in " + conflict.smaller() + "."));
    sheet.row(
        "try",
        "set it where each mix is made, if the desk can; or set the larger one and add "
            + (inWords(conflict.difference()) + " more to the others of " + conflict.smaller()));
  }

  private void table() {
    List<Row> rows =
        document.alignment().mixes().stream()
            .flatMap(mix -> mix.paths().stream().map(path -> new Row(mix.name(), path)))
            .toList();
    Table<Row> table = new Table<Row>().words("mix", Row::mix).words("path", r -> r.path().path());
    if (rows.stream().anyMatch(row -> row.path().offset().samples() > 0)) {
      table.figures("behind", row -> Numbers.brief(row.path().offset().ms(), 2));
    }
    table
        .figures("samples", row -> samples(row.path().add()))
        .figures("ms", row -> Numbers.plain(row.path().add().ms(), 3))
        .figures("metres", row -> Numbers.plain(document.metres(row.path().add()), 2))
        .figures("feet", row -> Numbers.plain(document.feet(row.path().add()), 2))
        .words("from", row -> row.path().delay().source().label())
        .lines(rows)
        .forEach(sheet::asIs);
  }

  private void meeting(AlignedMix mix) {
    sheet.row(
        mix.name(),
        "all meet "
            + (mix.target() + "; steps of " + document.alignment().step().label() + " leave ")
            + left(mix));
  }

  private static String left(AlignedMix mix) {
    OptionalDouble hz = mix.firstNullHz();
    return hz.isPresent() && hz.getAsDouble() < HIGHEST_SHOWN_HZ
        ? inWords(mix.widestGap())
            + (" at most, first null " + Numbers.brief(hz.getAsDouble() / 1000, 1) + " kHz")
        : "nothing";
  }

  private void unknown(AlignedMix mix) {
    if (!mix.unknown().isEmpty()) {
      sheet.row(
          "unknown",
          "does the desk delay the rest of "
              + (mix.name() + " to match " + String.join(", ", mix.unknown()))
              + "? If so, other delays are needed; measure the paths and give --measured");
    }
  }

  private void limit(AlignedPath path) {
    if (path.passesLimit()) {
      ListenerLimits limits = path.limits();
      sheet.row(
          "over",
          path.path()
              + (" is then " + Numbers.plain(path.delay().delay().plus(path.add()).ms(), 1))
              + " ms late, over its limit of "
              + Numbers.brief(limits.limitMs().orElse(0), 2)
              + (" ms (" + limits.rule() + ")"));
    }
  }

  private static String inWords(Latency delay) {
    return samples(delay) + " samples (" + Numbers.plain(delay.ms(), 3) + " ms)";
  }

  private static String samples(Latency delay) {
    return Numbers.brief(delay.samples(), FINEST_SAMPLE_DECIMALS);
  }

  /** All of it. */
  @Override
  public String toString() {
    return sheet.toString();
  }
}
