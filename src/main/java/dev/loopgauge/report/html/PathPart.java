package dev.loopgauge.report.html;

import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.section;
import static j2html.TagCreator.ul;

import dev.loopgauge.report.measured.ComparisonRecord;
import dev.loopgauge.report.measured.MeasurementDocument;
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
    content.add(h2(Escaping.brief(path.name())).withId(id));
    content.add(p(Escaping.shortened(Telling.verdict(path.latest()), 1_000)).withClass("lead"));
    path.budget()
        .flatMap(budget -> StagesPart.overLimit(budget, path.latest()))
        .ifPresent(over -> content.add(p(over)));
    ReadDocument latest = path.latest();
    latest
        .comparison()
        .flatMap(ComparisonRecord::towardsLimit)
        .ifPresent(limit -> content.add(p(Escaping.isolated(limit.text() + "."))));
    explanations(latest);
    add(
        "From stage to stage",
        "stages",
        path.budget().flatMap(b -> StagesPart.of(b, Optional.of(latest))));
    latest.measured().ifPresent(this::measured);
    path.shift().ifPresent(shift -> addAll("Before and after", BeforeAfterPart.of(path, shift)));
    latest
        .delay()
        .flatMap(delay -> HistoryPart.of(path.past(), delay.rateHz()))
        .ifPresent(figure -> addAll("Over shows", figure.html(id + "-history")));
    if (latest.delay().isPresent() || !latest.findings().isEmpty()) {
      addAll("Findings", FindingsPart.of(latest.findings()));
    }
  }

  private void explanations(ReadDocument latest) {
    List<String> causes =
        latest.comparison().stream()
            .flatMap(comparison -> comparison.explanations().stream())
            .map(explanation -> explanation.text())
            .toList();
    if (!causes.isEmpty()) {
      content.add(p("Most likely first:"));
      content.add(ul(each(causes, cause -> li(Escaping.isolated(cause)))));
    }
  }

  private void measured(MeasurementDocument document) {
    document
        .measurement()
        .ifPresent(
            measurement -> {
              addAll("Measured", MeasuredPart.of(path, measurement.delay()));
              add("What came back", "response", ResponsePart.of(document, measurement));
              add("By octave band", "bands", BandsPart.of(measurement));
            });
  }

  private void add(String heading, String name, Optional<PlotFigure> figure) {
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
