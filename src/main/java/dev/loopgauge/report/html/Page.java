package dev.loopgauge.report.html;

import static j2html.TagCreator.body;
import static j2html.TagCreator.document;
import static j2html.TagCreator.each;
import static j2html.TagCreator.footer;
import static j2html.TagCreator.h1;
import static j2html.TagCreator.head;
import static j2html.TagCreator.header;
import static j2html.TagCreator.html;
import static j2html.TagCreator.main;
import static j2html.TagCreator.meta;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.style;
import static j2html.TagCreator.title;

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

  private final String title;
  private final String made;
  private final List<DomContent> parts = new ArrayList<>();

  /**
   * A page.
   *
   * @param made what it is made from and by what, one sentence
   */
  Page(ReportDocument report, String made) {
    this.title = report.title();
    this.made = made;
    List<ReadDocument> readings = report.readings();
    Budgets budgets = new Budgets(readings);
    List<PathStory> paths = PathStory.of(report, budgets);
    parts.add(new VerdictPart(paths, readings).html());
    for (int i = 0; i < paths.size(); i++) {
      parts.add(new PathPart(paths.get(i), i + 1).html());
    }
    PicturePart.of(budgets.all(), paths).ifPresent(part -> parts.add(part.html()));
    Set<String> measured = paths.stream().map(PathStory::name).collect(Collectors.toSet());
    for (int i = 0; i < readings.size(); i++) {
      ReadDocument reading = readings.get(i);
      String id = "document-" + (i + 1);
      reading
          .document()
          .flatMap(document -> other(document, measured, id))
          .ifPresent(part -> parts.add(part.from(reading.path())));
    }
    parts.add(new RepeatPart(readings).html());
  }

  private static Optional<Section> other(Document document, Set<String> measured, String id) {
    if (document instanceof BudgetDocument budget) {
      return Optional.of(PlannedPart.of(budget, measured, id));
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
        title(Escaping.shortened(title, 200) + " · delay report"),
        style(rawHtml(css())));
  }

  private DomContent bodyTag() {
    return body(
        header(
            p("Delay report").withClass("kind"),
            h1(Escaping.brief(title)),
            p(made).withClass("made")),
        main(each(parts, part -> part)),
        footer(
            p(
                "± is the expanded uncertainty: the true delay lies inside with about 95 %"
                    + " (coverage factor 2, JCGM 100:2008). Positive delays are late."),
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
