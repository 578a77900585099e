package dev.loopgauge.report.html;

import static j2html.TagCreator.each;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.text;
import static j2html.TagCreator.ul;

import dev.loopgauge.report.measured.ComparisonRecord;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.MeasurementRecord;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** All there is to show of one path. */
final class PathPart {
  private final List<DomContent> content = new ArrayList<>();
  private final PathStory path;
  private final String id;
  private final boolean drawn;

  /**
   * A path's part.
   *
   * @param number its number in the page, from 1
   * @param drawn whether its plots are drawn; their numbers stand there in any case
   */
  PathPart(PathStory path, Budgets budgets, int number, boolean drawn) {
    this.path = path;
    this.id = Line.pathId(number);
    this.drawn = drawn;
    content.add(p(Escaping.isolated(path.sentence())).withClass("lead"));
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
        path.budget().flatMap(b -> StagesPart.of(b, Optional.of(latest), budgets)));
    latest.measured().ifPresent(this::measured);
    path.shift().ifPresent(shift -> addAll("Before and after", BeforeAfterPart.of(shift)));
    latest
        .delay()
        .flatMap(delay -> HistoryPart.of(path.past(), delay.rateHz()))
        .ifPresent(figure -> add("Over shows", "history", Optional.of(figure)));
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
    document.measurement().ifPresent(measurement -> measured(document, measurement));
  }

  private void measured(MeasurementDocument document, MeasurementRecord measurement) {
    addAll("Measured", MeasuredPart.of(path, measurement.delay()));
    content.add(p(MeasuredPart.beside(measurement)));
    add("What came back", "response", ResponsePart.of(document, measurement));
    add("By octave band", "bands", BandsPart.of(measurement));
  }

  private void add(String heading, String name, Optional<PlotFigure> figure) {
    figure.ifPresent(
        shown -> addAll(heading, drawn ? shown.html(id + "-" + name) : shown.undrawn()));
  }

  private void addAll(String heading, DomContent shown) {
    content.add(h3(heading));
    content.add(shown);
  }

  /** The part, with its standing in its heading. */
  DomContent html(boolean open) {
    DomContent heading =
        each(Standings.mark(path.standing()), text(" "), Escaping.brief(path.name()));
    return Fold.of(id, open, heading, content);
  }
}
