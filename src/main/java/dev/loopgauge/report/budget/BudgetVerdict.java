package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Standing;
import dev.loopgauge.report.budget.MixRecord.ArrivalRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The first lines of a budget: how the listeners stand, in words, the worst first. */
final class BudgetVerdict {
  private final List<PathRecord> paths;
  private final Sheet sheet;

  private BudgetVerdict(List<PathRecord> paths, Sheet sheet) {
    this.paths = paths;
    this.sheet = sheet;
  }

  /** Tells it. */
  static void tell(List<PathRecord> paths, List<MixRecord> mixes, Sheet sheet) {
    BudgetVerdict verdict = new BudgetVerdict(paths, sheet);
    List<PathRecord> over = verdict.paths(Standing.OVER);
    List<PathRecord> caution = verdict.paths(Standing.CAUTION);
    if (!over.isEmpty()) {
      sheet.line("OVER the limit: " + each(over, BudgetVerdict::beyond));
    }
    mixes.forEach(verdict::mix);
    paths.forEach(verdict::picture);
    if (!caution.isEmpty()) {
      sheet.line(
          "CAUTION, some begin to notice: "
              + each(caution, p -> p.name() + " at " + Numbers.inMs(p.judgedMs(), 1)));
    }
    if (over.isEmpty() && caution.isEmpty()) {
      sheet.line("WITHIN: every path by itself keeps its listener's limits.");
    }
  }

  /** The desk may make a listener late by waiting for the slowest of a mix. */
  private void mix(MixRecord mix) {
    for (ArrivalRecord arrival : mix.paths()) {
      if (isOver(arrival.standing())) {
        paths.stream()
            .filter(path -> path.name().equals(arrival.path()) && !isOver(path.heard()))
            .forEach(
                path ->
                    sheet.line(
                        "OVER the limit in the mix "
                            + (mix.name() + ": " + path.name() + " by ")
                            + path.beyond(arrival.limitedMs())
                            + ", since the desk delays it to match."));
      }
    }
  }

  private void picture(PathRecord path) {
    path.picture()
        .filter(PictureRecord::isOver)
        .ifPresent(
            picture ->
                sheet.line(
                    "OUTSIDE "
                        + (picture.title() + ": " + path.name() + ", ")
                        + (picture.apart() + ".")));
  }

  private List<PathRecord> paths(Standing standing) {
    return paths.stream().filter(p -> p.heard().orElse(null) == standing).toList();
  }

  private static String beyond(PathRecord path) {
    return path.name()
        + (" by " + path.beyond(path.judgedMs()))
        + path.judged().map(JudgedRecord::because).orElse("");
  }

  private static boolean isOver(Optional<Standing> standing) {
    return standing.filter(s -> s == Standing.OVER).isPresent();
  }

  private static String each(List<PathRecord> paths, Function<PathRecord, String> words) {
    return paths.stream().map(words).collect(Collectors.joining(", ", "", "."));
  }
}
