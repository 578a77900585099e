package dev.loopgauge.report.html;

import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.section;
import static j2html.TagCreator.ul;

import dev.loopgauge.report.form.Fields;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** All there is to show of one path. */
final class PathPart {
  private final List<DomContent> content = new ArrayList<>();
  private final PathStory path;
  private final String id;

  /**
   * A path's part.
   *
   * @param number its number in the page, from 1
   */
  PathPart(PathStory path, int number) {
    this.path = path;
    this.id = "path-" + number;
    Fields document = path.latest().fields();
    content.add(h2(Names.brief(path.name())).withId(id));
    content.add(p(Names.shortened(Telling.verdict(path.latest()), 1_000)).withClass("lead"));
    path.budget()
        .flatMap(budget -> StagesPart.overLimit(budget, path.latest()))
        .ifPresent(over -> content.add(p(over)));
    document
        .part("comparison")
        .flatMap(comparison -> comparison.part("towardsLimit"))
        .flatMap(limit -> limit.text("text"))
        .ifPresent(text -> content.add(p(Names.isolated(text + "."))));
    explanations(document);
    add("From stage to stage", "stages", path.budget().flatMap(b -> StagesPart.of(b, latest())));
    document.part("measurement").ifPresent(this::measured);
    path.shift().ifPresent(shift -> addAll("Before and after", BeforeAfterPart.of(path, shift)));
    path.latest()
        .delay()
        .flatMap(delay -> HistoryPart.of(path.past(), delay.rateHz()))
        .ifPresent(figure -> addAll("Over shows", figure.html(id + "-history")));
    if (path.latest().delay().isPresent() || !document.parts("findings").isEmpty()) {
      addAll("Findings", FindingsPart.of(document.parts("findings")));
    }
  }

  private Optional<Reading> latest() {
    return Optional.of(path.latest());
  }

  private void explanations(Fields document) {
    List<String> causes =
        document.part("comparison").stream()
            .flatMap(comparison -> comparison.parts("explanations").stream())
            .flatMap(explanation -> explanation.text("text").stream())
            .toList();
    if (!causes.isEmpty()) {
      content.add(p("Most likely first:"));
      content.add(ul(each(causes, cause -> li(Names.isolated(cause)))));
    }
  }

  private void measured(Fields measurement) {
    path.latest().delay().ifPresent(delay -> measured(measurement, delay));
  }

  private void measured(Fields measurement, Delay delay) {
    addAll("Measured", MeasuredPart.of(path, delay));
    add("What came back", "response", ResponsePart.of(path.latest().fields(), delay));
    add("By octave band", "bands", BandsPart.of(measurement, delay));
  }

  private void add(String heading, String name, Optional<Figure> figure) {
    figure.ifPresent(shown -> addAll(heading, shown.html(id + "-" + name)));
  }

  private void addAll(String heading, DomContent shown) {
    content.add(h3(heading));
    content.add(shown);
  }

  /** The section. */
  DomContent html() {
    return section(each(content, part -> part)).attr("aria-labelledby", id);
  }
}
