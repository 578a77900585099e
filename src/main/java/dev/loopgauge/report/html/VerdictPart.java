package dev.loopgauge.report.html;

import static j2html.TagCreator.a;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.section;
import static j2html.TagCreator.span;
import static j2html.TagCreator.text;
import static j2html.TagCreator.ul;

import dev.loopgauge.verify.verdict.Judgement;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The first screen: the verdict in words, the worst first, what changed, and who hears what when.
 */
record VerdictPart(FirstWords opening, Budgets budgets) {
  /** Calm lines up to this number have a sentence each; of more there are the names alone. */
  private static final int MOST_SENTENCES = 2;

  /** The first screen. */
  DomContent html() {
    DomContent verdict = section(each(verdict(), part -> part)).attr("aria-labelledby", "verdict");
    return heard()
        .<DomContent>map(figure -> div(verdict, picture(figure)).withClass("screen"))
        .orElse(verdict);
  }

  /** The numbers of its picture; none without one. */
  List<DomContent> numbers() {
    return heard().stream()
        .<DomContent>map(
            figure ->
                section(h2("In numbers").withId("numbers"), figure.undrawn())
                    .attr("aria-labelledby", "numbers"))
        .toList();
  }

  private Optional<PlotFigure> heard() {
    return HeardPart.of(opening.paths(), budgets);
  }

  private static DomContent picture(PlotFigure figure) {
    return section(h2("Who hears what when").withId("heard"), figure.drawing("heard-plot"))
        .attr("aria-labelledby", "heard");
  }

  private List<DomContent> verdict() {
    List<DomContent> content = new ArrayList<>();
    content.add(h2("Verdict").withId("verdict"));
    content.add(p(opening.lead()).withClass("lead"));
    if (!opening.lines().isEmpty()) {
      content.add(ul(each(Standings.WORST_FIRST, this::lines)).withClass("standings"));
    }
    if (!opening.others().isEmpty()) {
      content.add(ul(each(opening.others(), line -> li(Escaping.isolated(line)))));
    }
    changes(content);
    return content;
  }

  private DomContent lines(Judgement judgement) {
    List<Line> lines = opening.standing(judgement);
    boolean calm = judgement == Judgement.GOOD || judgement == Judgement.NOT_JUDGED;
    if (calm && lines.size() > MOST_SENTENCES) {
      return li(
          Standings.mark(judgement),
          span(
              each(
                  lines,
                  (i, line) ->
                      each(
                          linked(line.name(), line.link()),
                          text(i + 1 < lines.size() ? ", " : "")))));
    }
    return each(lines, VerdictPart::line);
  }

  private static DomContent line(Line line) {
    return li(
        Standings.mark(line.standing()),
        span(linked(line.name(), line.link()), text(" "), Escaping.isolated(line.text())));
  }

  private void changes(List<DomContent> content) {
    List<PathStory> changed = opening.changedPaths();
    if (changed.isEmpty()) {
      return;
    }
    content.add(h3("Changed from before to after"));
    content.add(ul(each(changed, this::change)).withClass("changes"));
  }

  private DomContent change(PathStory path) {
    List<String> words = path.shift().orElseThrow().inWords();
    return li(
        linked(path.name(), opening.link(path)),
        text(" "),
        Escaping.isolated(String.join("; ", words)));
  }

  private static DomContent linked(String name, Optional<String> link) {
    return link.<DomContent>map(id -> a(Escaping.brief(name)).withHref("#" + id))
        .orElse(Escaping.brief(name));
  }
}
