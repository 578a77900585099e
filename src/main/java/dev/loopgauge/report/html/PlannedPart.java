package dev.loopgauge.report.html;

import static j2html.TagCreator.each;
import static j2html.TagCreator.h3;

import dev.loopgauge.report.form.Fields;
import dev.loopgauge.report.form.Numbers;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What a budget document says: each path against its listener, stage by stage. */
final class PlannedPart {
  private PlannedPart() {}

  /**
   * The section; empty for another document.
   *
   * @param measured the paths whose stages are shown with their measurement
   */
  static Optional<Section> of(Fields document, Set<String> measured, String id) {
    List<Fields> paths = document.parts("paths");
    if (paths.isEmpty()) {
      return Optional.empty();
    }
    Grid grid = new Grid("Each path against its listener", "Path", "Standing", "ms").words(2);
    List<DomContent> content = new ArrayList<>();
    content.add(grid.html());
    for (Fields path : paths) {
      String name = path.text("name").orElse("");
      grid.row(
          name,
          path.text("listener").orElse("") + ": " + standing(path),
          path.number("delayMs").map(ms -> Numbers.plain(ms, 3)).orElse(""));
      if (!measured.contains(name)) {
        String figureId = id + "-" + content.size();
        StagesPart.of(path, Optional.empty())
            .ifPresent(f -> content.add(each(h3(Names.brief(name)), f.html(figureId))));
      }
    }
    content.set(0, grid.html());
    return Optional.of(new Section(id + "-part", "As planned", content));
  }

  private static String standing(Fields path) {
    String standing = path.text("standing").orElse("unknown");
    Optional<Double> limit = path.number("limitMs");
    if (limit.isEmpty()) {
      return "no limit";
    }
    double beyond = path.number("delayMs").orElse(0.0) - limit.get();
    return standing.equals("over")
        ? "over by " + Numbers.plain(beyond, 1) + " ms"
        : standing + " (limit " + Numbers.brief(limit.get(), 2) + " ms)";
  }
}
