package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Standing;
import dev.loopgauge.report.budget.MixRecord.ArrivalRecord;
import dev.loopgauge.report.form.Alike;
import dev.loopgauge.report.form.Excerpt;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** The first lines of a budget: how the listeners stand, in words, the worst first. */
final class BudgetVerdict {
  /** The most paths that are named one by one. */
  private static final int MOST_NAMED = 6;

  private final List<PathRecord> paths;
  private final Excerpt excerpt;
  private final Sheet sheet;

  private BudgetVerdict(List<PathRecord> paths, Excerpt excerpt, Sheet sheet) {
    this.paths = paths;
    this.excerpt = excerpt;
    this.sheet = sheet;
  }

  /** Tells it. */
  static void tell(List<PathRecord> paths, List<MixRecord> mixes, Excerpt excerpt, Sheet sheet) {
    BudgetVerdict verdict = new BudgetVerdict(paths, excerpt, sheet);
    List<PathRecord> over = verdict.paths(Standing.OVER);
    List<PathRecord> caution = verdict.paths(Standing.CAUTION);
    if (!over.isEmpty()) {
      sheet.line("OVER the limit: " + verdict.each(over, BudgetVerdict::beyond));
    }
    for (MixRecord mix : mixes) {
      verdict.mix(mix);
    }
    verdict.pictures();
    if (!caution.isEmpty()) {
      sheet.line(
          "CAUTION, some begin to notice: "
              + verdict.each(caution, path -> "at " + Numbers.inMs(path.judgedMs(), 1)));
    }
    if (over.isEmpty() && caution.isEmpty()) {
      sheet.line("WITHIN: every path by itself keeps its listener's limits.");
    }
  }

  /** The desk may make a listener late by waiting for the slowest of a mix. */
  private void mix(MixRecord mix) {
    Map<String, ArrivalRecord> late = new HashMap<>();
    for (ArrivalRecord arrival : mix.paths()) {
      if (arrival.standing().orElse(null) == Standing.OVER) {
        late.put(arrival.path(), arrival);
      }
    }
    List<PathRecord> made = new ArrayList<>();
    for (PathRecord path : paths) {
      if (late.containsKey(path.name()) && path.heard().orElse(null) != Standing.OVER) {
        made.add(path);
      }
    }
    if (!made.isEmpty()) {
      String each = each(made, path -> "by " + path.beyond(late.get(path.name()).limitedMs()));
      sheet.line(
          "OVER the limit in the mix "
              + (mix.name() + ": " + each.substring(0, each.length() - 1))
              + ", since the desk delays "
              + (made.size() == 1 ? "it" : "them")
              + " to match.");
    }
  }

  private void pictures() {
    List<PathRecord> outside = new ArrayList<>();
    for (PathRecord path : paths) {
      if (path.picture().isPresent() && path.picture().get().isOver()) {
        outside.add(path);
      }
    }
    Excerpt.Part<PathRecord> part =
        excerpt.of(outside, MOST_NAMED, BudgetVerdict::picture, PathTable.worstFirst());
    for (Alike<PathRecord> row : part.shown()) {
      sheet.line(
          "OUTSIDE "
              + (row.first().picture().orElseThrow().title() + ": ")
              + (row.names(PathRecord::name) + ", " + picture(row.first()) + "."));
    }
    if (part.hidden() > 0) {
      sheet.line("OUTSIDE their picture's rule too: " + part.hidden() + " paths more.");
    }
  }

  private static String picture(PathRecord path) {
    return path.picture().isPresent() ? path.picture().get().apart() : "";
  }

  private List<PathRecord> paths(Standing standing) {
    List<PathRecord> standingSo = new ArrayList<>();
    for (PathRecord path : paths) {
      if (path.heard().orElse(null) == standing) {
        standingSo.add(path);
      }
    }
    standingSo.sort(PathTable.worstFirst());
    return standingSo;
  }

  private static String beyond(PathRecord path) {
    String because = path.judged().isPresent() ? path.judged().get().because() : "";
    return "by " + path.beyond(path.judgedMs()) + because;
  }

  /** The paths, each with what there is to say of it; those of which it is the same together. */
  private String each(List<PathRecord> paths, Function<PathRecord, String> words) {
    Excerpt.Part<PathRecord> part = excerpt.of(paths, MOST_NAMED, words, PathTable.worstFirst());
    List<String> each = new ArrayList<>();
    for (Alike<PathRecord> row : part.shown()) {
      each.add(row.names(PathRecord::name) + " " + words.apply(row.first()));
    }
    String told = String.join(part.isGrouped() ? "; " : ", ", each);
    return told + (part.hidden() > 0 ? "; and " + part.hidden() + " paths more." : ".");
  }
}
