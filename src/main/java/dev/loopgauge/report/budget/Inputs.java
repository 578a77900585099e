package dev.loopgauge.report.budget;

import dev.loopgauge.report.budget.InputRecord.LaterRecord;
import dev.loopgauge.report.form.Alike;
import dev.loopgauge.report.form.Excerpt;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Where the inputs go, side by side, in words. */
final class Inputs {
  private static final int MOST_INPUTS = 8;
  private static final int MOST_PATHS = 8;
  private static final int MS_DECIMALS = 3;

  private final List<PathRecord> paths;
  private final Excerpt excerpt;
  private final Sheet sheet;

  private Inputs(List<PathRecord> paths, Excerpt excerpt, Sheet sheet) {
    this.paths = paths;
    this.excerpt = excerpt;
    this.sheet = sheet;
  }

  /** Tells how much later each path is than the fastest of its input, and by which stages. */
  static void tell(List<InputRecord> all, List<PathRecord> paths, Excerpt excerpt, Sheet sheet) {
    Inputs inputs = new Inputs(paths, excerpt, sheet);
    Excerpt.Part<InputRecord> part = excerpt.of(all, MOST_INPUTS, Inputs::key, widestFirst());
    for (Alike<InputRecord> input : part.shown()) {
      inputs.tell(input);
    }
    if (part.hidden() > 0) {
      sheet.line("And " + part.hidden() + " inputs more that go to several paths.").gap();
    }
  }

  /** Which paths an input goes to doesn't matter, how much later they are does. */
  private static Object key(InputRecord input) {
    List<String> later = new ArrayList<>();
    for (LaterRecord one : input.later()) {
      later.add(one.laterMs() + one.because());
    }
    return later;
  }

  private static Comparator<InputRecord> widestFirst() {
    return (one, other) -> width(other).compareTo(width(one));
  }

  private static BigDecimal width(InputRecord input) {
    BigDecimal latest = BigDecimal.ZERO;
    for (LaterRecord one : input.later()) {
      latest = latest.max(one.laterMs());
    }
    return latest;
  }

  private void tell(Alike<InputRecord> inputs) {
    InputRecord input = inputs.first();
    sheet.line(
        (inputs.rows().size() == 1 ? "Input " : "Inputs ")
            + inputs.names(InputRecord::input)
            + (inputs.rows().size() == 1 ? ": " : ", such as " + input.input() + ": ")
            + input.fastest()
            + (" is the fastest" + delayOf(input.fastest()) + ". Later are:"));
    Excerpt.Part<LaterRecord> part =
        excerpt.of(
            input.later(),
            MOST_PATHS,
            one -> one.laterMs() + one.because(),
            (one, other) -> other.laterMs().compareTo(one.laterMs()));
    for (Alike<LaterRecord> row : part.shown()) {
      sheet.row(
          "+" + Numbers.inMs(row.first().laterMs(), MS_DECIMALS),
          row.names(LaterRecord::path) + ": " + row.first().because());
    }
    if (part.hidden() > 0) {
      sheet.line("  and " + part.hidden() + " paths more");
    }
    sheet.gap();
  }

  private String delayOf(String name) {
    for (PathRecord path : paths) {
      if (path.name().equals(name)) {
        return ", " + Numbers.inMs(path.delayMs(), MS_DECIMALS);
      }
    }
    return "";
  }
}
