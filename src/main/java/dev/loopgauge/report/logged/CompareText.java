package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Cause;
import dev.loopgauge.journal.Compared;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.journal.PathPair;
import dev.loopgauge.journal.PathPair.Standing;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.verify.Shift;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The comparison as text: how many changed, then each path. */
final class CompareText {
  private static final int PATH_COLUMNS = 20;

  private final CompareDocument document;
  private final Sheet sheet = new Sheet();

  CompareText(CompareDocument document) {
    this.document = document;
    sheet.line(verdict());
    List<String> lines =
        new Table<Compared>()
            .words("path", path -> name(path.pair()))
            .words(document.first() + " → " + document.second(), path -> delays(path.pair()))
            .words("", path -> told(path.pair()))
            .lines(document.paths());
    sheet.asIs(lines.get(0));
    for (int i = 0; i < document.paths().size(); i++) {
      sheet.asIs(lines.get(i + 1));
      causes(document.paths().get(i));
    }
  }

  private String verdict() {
    int all = document.paths().size();
    List<String> parts = new ArrayList<>();
    parts.add(
        "%d of %d path%s the same"
            .formatted(document.count(Standing.SAME), all, all == 1 ? "" : "s"));
    add(parts, document.count(Standing.CHANGED), "CHANGED");
    add(parts, document.count(Standing.NOT_COMPARED), "can't be compared");
    return String.join(", ", parts) + ".";
  }

  private static void add(List<String> parts, long count, String what) {
    if (count > 0) {
      parts.add(count + " " + what);
    }
  }

  private static String name(PathPair pair) {
    return pair.path().map(path -> OneLine.brief(path, PATH_COLUMNS)).orElse("(no path named)");
  }

  private static String delays(PathPair pair) {
    return delay(pair.first()) + " → " + delay(pair.second());
  }

  private static String delay(Optional<Heading> heading) {
    return heading
        .flatMap(Heading::delay)
        .map(CompareText::delay)
        .orElse(heading.isPresent() ? "?" : "-");
  }

  private static String delay(LoggedDelay logged) {
    int decimals = Logs.decimals(logged.uncertaintySamples());
    return Numbers.plain(logged.delay().samples(), decimals);
  }

  private String told(PathPair pair) {
    String during =
        pair.second().filter(later -> later.when() == When.DURING).isPresent()
                && document.second().equals(When.AFTER.label())
            ? " (during)"
            : "";
    if (pair.standing() == Standing.NOT_COMPARED) {
      return document.missing(pair) + during;
    }
    Shift shift = pair.shift().orElseThrow();
    int decimals = Logs.decimals(shift.uncertaintySamples());
    String uncertainty = Numbers.plainUp(shift.uncertaintySamples(), decimals);
    if (pair.standing() == Standing.SAME) {
      return "same (difference %s ± %s)"
              .formatted(Numbers.plain(shift.samples(), decimals), uncertainty)
          + during;
    }
    Latency later = pair.later().orElseThrow();
    return "CHANGED %s ± %s (%s ms)"
            .formatted(
                Numbers.signed(shift.samples(), decimals),
                uncertainty,
                Numbers.signed(later.ms(), 2))
        + during;
  }

  private void causes(Compared path) {
    if (path.pair().standing() != Standing.CHANGED) {
      return;
    }
    for (Cause cause : path.causes()) {
      String label =
          switch (cause.standing()) {
            case EXPLAINS -> "  because";
            case RECORDED -> "  changed";
            case LIKELY -> "  likely";
          };
      sheet.row(label, OneLine.line(cause.text()));
    }
    if (path.causes().isEmpty()) {
      sheet.row("  cause", "nothing that the journal or the chain file knows of makes this");
    }
  }

  /** All of it. */
  @Override
  public String toString() {
    return sheet.toString();
  }
}
