package dev.loopgauge.report.budget;

import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.plan.MixArrival;
import dev.loopgauge.plan.MixBudget;
import dev.loopgauge.plan.PictureMatch;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The first lines of a budget: how the listeners stand, in words, the worst first. */
final class BudgetVerdict {
  private final BudgetDocument document;
  private final Sheet sheet;

  private BudgetVerdict(BudgetDocument document, Sheet sheet) {
    this.document = document;
    this.sheet = sheet;
  }

  /** Tells it. */
  static void tell(BudgetDocument document, Sheet sheet) {
    BudgetVerdict verdict = new BudgetVerdict(document, sheet);
    List<PathBudget> over = verdict.paths(Standing.OVER);
    List<PathBudget> caution = verdict.paths(Standing.CAUTION);
    if (!over.isEmpty()) {
      sheet.line("OVER the limit: " + each(over, BudgetVerdict::beyond));
    }
    document.mixes().forEach(verdict::mix);
    document.paths().forEach(verdict::picture);
    if (!caution.isEmpty()) {
      sheet.line("CAUTION, some begin to notice: " + each(caution, BudgetVerdict::late));
    }
    if (over.isEmpty() && caution.isEmpty()) {
      sheet.line("WITHIN: every path by itself keeps its listener's limits.");
    }
  }

  /** The desk may make a listener late by waiting for the slowest of a mix. */
  private void mix(MixBudget mix) {
    for (MixArrival arrival : mix.arrivals()) {
      if (arrival.standing() == Standing.OVER && arrival.path().standing() != Standing.OVER) {
        sheet.line(
            "OVER the limit in the mix "
                + (mix.name() + ": " + arrival.path().name() + " by ")
                + Standings.beyond(arrival.path().limits(), arrival.delay())
                + ", since the desk delays it to match.");
      }
    }
  }

  private void picture(PathBudget path) {
    PictureMatch.of(
            document.chain(), document.chain().path(path.name()), path.delay(), document.rule())
        .filter(match -> match.standing() == Standing.OVER)
        .ifPresent(
            match ->
                sheet.line(
                    "OUTSIDE "
                        + (match.rule().title() + ": " + match.path() + ", ")
                        + (Pictures.apart(match) + ".")));
  }

  private List<PathBudget> paths(Standing standing) {
    return document.paths().stream().filter(path -> path.standing() == standing).toList();
  }

  private static String each(List<PathBudget> paths, Function<PathBudget, String> words) {
    return paths.stream().map(words).collect(Collectors.joining(", ", "", "."));
  }

  private static String beyond(PathBudget path) {
    return path.name() + " by " + Standings.beyond(path.limits(), path.delay());
  }

  private static String late(PathBudget path) {
    return path.name() + " at " + Numbers.plain(path.delay().ms(), 1) + " ms";
  }
}
