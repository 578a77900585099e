package dev.loopgauge.report.html;

import static j2html.TagCreator.each;
import static j2html.TagCreator.h3;

import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.budget.PathRecord;
import dev.loopgauge.report.form.Numbers;
import j2html.tags.DomContent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What a budget document says: each path against its listener, stage by stage. */
final class PlannedPart {
  private PlannedPart() {}

  /**
   * The section.
   *
   * @param measured the paths whose stages are shown with their measurement
   */
  static Section of(BudgetDocument document, Set<String> measured, Budgets budgets, String id) {
    Grid grid = new Grid("Each path against its listener", "Path", "Standing", "ms").words(2);
    List<DomContent> content = new ArrayList<>();
    content.add(grid.html());
    for (PathRecord path : document.paths()) {
      String name = path.name();
      grid.row(
          name,
          path.listener().map(Listener::label).orElse("") + ": " + standing(path),
          Numbers.plain(path.delayMs().doubleValue(), 3));
      if (!measured.contains(name)) {
        String figureId = id + "-" + content.size();
        StagesPart.of(path, Optional.empty(), budgets)
            .ifPresent(f -> content.add(each(h3(Escaping.brief(name)), f.html(figureId))));
      }
    }
    content.set(0, grid.html());
    return new Section(id + "-part", "As planned", content);
  }

  private static String standing(PathRecord path) {
    Optional<Double> limit = path.limitMs().map(BigDecimal::doubleValue);
    if (limit.isEmpty()) {
      return "no limit";
    }
    double beyond = path.judgedMs().doubleValue() - limit.get();
    return path.heard().filter(s -> s == Standing.OVER).isPresent()
        ? "over by " + Numbers.plain(beyond, 1) + " ms"
        : path.heard().map(Standing::label).orElse("unknown")
            + (" (limit " + Numbers.brief(limit.get(), 2) + " ms)");
  }
}
