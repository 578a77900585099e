package dev.loopgauge.report.html;

import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.section;
import static j2html.TagCreator.ul;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;

/** The verdict over all, first in words, then path by path. */
record VerdictPart(List<PathStory> paths, List<ReadDocument> readings) {
  /** The section. */
  DomContent html() {
    List<DomContent> content = new ArrayList<>();
    content.add(h2("Verdict").withId("verdict"));
    content.add(p(lead()).withClass("lead"));
    if (paths.size() > 1) {
      content.add(table());
    }
    List<String> others = others();
    if (!others.isEmpty()) {
      content.add(ul(each(others, line -> li(Escaping.shortened(line, 1_000)))));
    }
    return section(each(content, part -> part)).attr("aria-labelledby", "verdict");
  }

  /** The first sentence of the report. */
  String lead() {
    if (paths.isEmpty()) {
      return others().isEmpty() ? "Nothing was measured." : others().get(0);
    }
    return (paths.size() == 1 ? only(paths.get(0)) : measured()) + changed();
  }

  private static String only(PathStory path) {
    return Escaping.shortened(path.name(), 80) + ": " + Telling.verdict(path.latest());
  }

  private String measured() {
    List<String> wrong =
        paths.stream().filter(PathStory::needsAttention).map(PathStory::name).toList();
    if (wrong.isEmpty()) {
      return withoutFault();
    }
    String of =
        wrong.size() + " of " + counted(paths.size()) + (wrong.size() == 1 ? " needs" : " need");
    return of + " attention: " + listed(wrong) + ".";
  }

  private String withoutFault() {
    long compared =
        paths.stream().filter(p -> p.latest().outcome().equals("within-budget")).count();
    if (compared == 0) {
      return counted(paths.size()) + " measured, compared with no budget.";
    }
    if (compared < paths.size()) {
      return compared + " of " + counted(paths.size()) + " within budget, the others without one.";
    }
    return "All " + paths.size() + " paths are within their budgets.";
  }

  private String changed() {
    List<PathStory> both = paths.stream().filter(path -> path.shift().isPresent()).toList();
    List<String> moved =
        both.stream()
            .filter(path -> path.shift().orElseThrow().changed())
            .map(PathStory::name)
            .toList();
    if (both.isEmpty()) {
      return "";
    }
    return moved.isEmpty()
        ? " Nothing changed from before to after."
        : " Changed from before to after: " + listed(moved) + ".";
  }

  private DomContent table() {
    Grid grid = new Grid("What was measured last on each path", "Path", "Verdict").words(2);
    paths.forEach(path -> grid.row(path.name(), Telling.verdict(path.latest())));
    return grid.html();
  }

  /** What the documents say that measure no path, a sentence each. */
  List<String> others() {
    return readings.stream().flatMap(reading -> Summary.of(reading).stream()).toList();
  }

  /** Names in a sentence. */
  static String listed(List<String> names) {
    return String.join(", ", names.stream().map(name -> Escaping.shortened(name, 80)).toList());
  }

  private static String counted(int paths) {
    return paths == 1 ? "1 path" : paths + " paths";
  }
}
