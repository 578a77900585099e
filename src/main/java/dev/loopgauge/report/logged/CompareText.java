package dev.loopgauge.report.logged;

import dev.loopgauge.journal.ComparedAspect;
import dev.loopgauge.journal.PathPair.Standing;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Table;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** The comparison as text: how many changed, then each path. */
final class CompareText {
  private static final int PATH_COLUMNS = 20;

  private final CompareDocument document;
  private final Sheet sheet = new Sheet();

  CompareText(CompareDocument document) {
    this.document = document;
    sheet.line(new CompareHeadline(document.first(), document.second(), document.paths()).line());
    List<String> lines =
        new Table<ComparedRecord>()
            .words("path", path -> path.name(PATH_COLUMNS))
            .words(document.first() + " → " + document.second(), CompareText::delays)
            .words("", this::told)
            .lines(document.paths());
    sheet.asIs(lines.get(0));
    for (int i = 0; i < document.paths().size(); i++) {
      sheet.asIs(lines.get(i + 1));
      causes(document.paths().get(i));
      document.paths().get(i).notes().forEach(note -> sheet.row("  note", OneLine.line(note)));
    }
  }

  private static String delays(ComparedRecord path) {
    return delay(path.first()) + " → " + delay(path.second());
  }

  private static String delay(Optional<ListedRecord> listed) {
    return listed
        .flatMap(ListedRecord::delay)
        .map(CompareText::delay)
        .orElse(listed.isPresent() ? "?" : "-");
  }

  private static String delay(ShownDelay delay) {
    return Numbers.plain(delay.samples(), Logs.decimals(delay.uncertaintySamples()));
  }

  private String told(ComparedRecord path) {
    return standing(path) + (isDuring(path) ? " (during)" : "");
  }

  private boolean isDuring(ComparedRecord path) {
    return path.second().filter(later -> later.when() == When.DURING).isPresent()
        && document.second().equals(When.AFTER.label());
  }

  private String standing(ComparedRecord path) {
    if (path.standing() == Standing.NOT_COMPARED) {
      return path.missing(document.first(), document.second());
    }
    return path.standing() == Standing.SAME || delayMoved(path) ? difference(path) : changed(path);
  }

  private static boolean delayMoved(ComparedRecord path) {
    return path.changedAspects().contains(ComparedAspect.DELAY) && path.hasSecond();
  }

  private static String changed(ComparedRecord path) {
    return "CHANGED: " + path.aspects() + (path.hasSecond() ? " (delay same)" : "");
  }

  private static String difference(ComparedRecord path) {
    double uncertainty = number(path.uncertaintySamples());
    int decimals = Logs.decimals(uncertainty);
    double difference = number(path.differenceSamples());
    String uncertain = Numbers.plainUp(uncertainty, decimals);
    return path.standing() == Standing.SAME
        ? "same (difference %s ± %s)".formatted(Numbers.plain(difference, decimals), uncertain)
        : "CHANGED %s ± %s (%s ms)"
            .formatted(
                Numbers.signed(difference, decimals),
                uncertain,
                Numbers.signed(number(path.differenceMs()), 2));
  }

  private static double number(Optional<BigDecimal> figure) {
    return figure.map(BigDecimal::doubleValue).orElse(0.0);
  }

  private void causes(ComparedRecord path) {
    if (path.standing() != Standing.CHANGED) {
      return;
    }
    for (ChangeRecord change : path.changes()) {
      if (change.aspect() != ComparedAspect.DELAY || !path.hasSecond()) {
        sheet.row("  " + AspectWords.name(change.aspect()), OneLine.line(change.text()));
      }
    }
    for (CauseRecord cause : path.causes()) {
      String label =
          switch (cause.standing()) {
            case EXPLAINS -> "  because";
            case RECORDED -> "  changed";
            case LIKELY -> "  likely";
          };
      sheet.row(label, OneLine.line(cause.text()));
    }
    if (path.causes().isEmpty() && delayMoved(path)) {
      sheet.row("  cause", "nothing that the journal or the chain file knows of makes this");
    }
  }

  /** All of it. */
  @Override
  public String toString() {
    return sheet.toString();
  }
}
