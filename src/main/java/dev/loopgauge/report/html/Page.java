package dev.loopgauge.report.html;

import static j2html.TagCreator.body;
import static j2html.TagCreator.div;
import static j2html.TagCreator.document;
import static j2html.TagCreator.each;
import static j2html.TagCreator.footer;
import static j2html.TagCreator.h1;
import static j2html.TagCreator.head;
import static j2html.TagCreator.header;
import static j2html.TagCreator.html;
import static j2html.TagCreator.li;
import static j2html.TagCreator.main;
import static j2html.TagCreator.meta;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.style;
import static j2html.TagCreator.title;
import static j2html.TagCreator.ul;

import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.measured.TrackDocument;
import dev.loopgauge.report.series.SeriesDocument;
import j2html.tags.DomContent;
import j2html.tags.specialized.HeadTag;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** A whole report as one file that needs nothing else: no script, no network, no other file. */
final class Page {
  /** Forbids the page whatever it does not need, so that even a fault in it could load nothing. */
  private static final String POLICY = "default-src 'none'; style-src 'unsafe-inline'";

  private static final String LEFT_OUT =
      "What is folded is not printed: unfold it first, or make the page with --full, which unfolds"
          + " all and draws the plots of every path.";

  /** Of more paths than these, only the worst is drawn in a page that isn't full. */
  private static final int ALL_DRAWN = 3;

  private final ReportDocument report;
  private final Budgets budgets;
  private final List<String> occasion;
  private final List<DomContent> parts = new ArrayList<>();

  /** A page of a report. */
  Page(ReportDocument report) {
    this.report = report;
    List<ReadDocument> readings = report.readings();
    budgets = new Budgets(readings);
    occasion = Occasion.told(readings, report.layout(), budgets);
    List<PathStory> paths = PathStory.of(readings, report.past(), budgets);
    RepeatPart repeat = new RepeatPart(readings);
    VerdictPart verdict = new VerdictPart(FirstWords.of(paths, readings), budgets);
    parts.add(verdict.html());
    parts.add(
        div(each(verdict.numbers(), part -> part), each(repeat.shared(), part -> part))
            .withClass("halves"));
    List<Section> others = others(readings, paths);
    boolean full = report.layout().full();
    boolean open = full || paths.size() + others.size() == 1;
    for (int i = 0; i < paths.size(); i++) {
      boolean drawn = full || i == 0 || paths.size() <= ALL_DRAWN;
      parts.add(new PathPart(paths.get(i), budgets, i + 1, drawn).html(open));
    }
    others.forEach(part -> parts.add(part.html(open)));
    parts.add(repeat.folded(open));
    if (!open) {
      parts.add(p(LEFT_OUT).withClass("made"));
    }
  }

  private List<Section> others(List<ReadDocument> readings, List<PathStory> paths) {
    List<Section> others = new ArrayList<>();
    PicturePart.of(budgets.all(), paths).ifPresent(others::add);
    Set<String> measured = paths.stream().map(PathStory::name).collect(Collectors.toSet());
    for (int i = 0; i < readings.size(); i++) {
      ReadDocument reading = readings.get(i);
      String id = Line.documentId(i + 1);
      reading
          .document()
          .flatMap(document -> other(document, measured, id))
          .ifPresent(part -> others.add(part.from(reading.path())));
    }
    return others;
  }

  private Optional<Section> other(Document document, Set<String> measured, String id) {
    if (document instanceof BudgetDocument budget) {
      return Optional.of(PlannedPart.of(budget, measured, budgets, id));
    }
    if (document instanceof SeriesDocument series) {
      return SeriesPart.of(series, id);
    }
    return document instanceof TrackDocument track
        ? TrackPart.of(track, id)
        : TablesPart.of(document, id);
  }

  /** The file's text. */
  String text() {
    return Escaping.visible(document(html(headTag(), bodyTag()).withLang("en"))) + "\n";
  }

  private HeadTag headTag() {
    return head(
        meta().withCharset("utf-8"),
        meta().attr("http-equiv", "Content-Security-Policy").withContent(POLICY),
        meta().withName("viewport").withContent("width=device-width, initial-scale=1"),
        meta().withName("color-scheme").withContent("light dark"),
        title(Escaping.shortened(report.title(), 200) + " · delay report"),
        style(rawHtml(css())));
  }

  private DomContent bodyTag() {
    return body(
        header(
            p("Delay report").withClass("kind"),
            h1(Escaping.brief(report.title())),
            ul(each(occasion, fact -> li(Escaping.brief(fact)))).withClass("occasion")),
        main(each(parts, part -> part)),
        footer(
            p(report.made()),
            p(
                "± is the expanded uncertainty from repeatability and noise: the delay lies inside"
                    + " with about 95 % (coverage factor 2, JCGM 100:2008). A delay without ± has"
                    + " the sound card's own delay in it. Positive delays are late."),
            p(
                "Colours after Okabe and Ito, Color Universal Design (2008), chosen so that"
                    + " colour-blind people can tell them apart.")));
  }

  private static String css() {
    try (InputStream css = Page.class.getResourceAsStream("page.css")) {
      return new String(css.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
