package dev.loopgauge.report.html;

import static j2html.TagCreator.div;
import static j2html.TagCreator.figcaption;
import static j2html.TagCreator.figure;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;

import dev.loopgauge.report.plot.Plot;
import dev.loopgauge.report.plot.Size;
import dev.loopgauge.report.plot.UndrawableException;
import j2html.tags.DomContent;

/**
 * A plot at both its sizes, of which the page shows one, with its numbers in a table below.
 *
 * @param title what it is, for those who can't see it
 * @param description what can be seen in it, in words, for all
 */
record PlotFigure(Plot plot, String title, String description, Grid numbers) {
  /**
   * The figure.
   *
   * @param id a name that no other figure of the page has
   */
  DomContent html(String id) {
    try {
      return drawn(id);
    } catch (UndrawableException e) {
      return div(
          p("Not drawn, since this computer has no fonts; these are its numbers."), numbers.html());
    }
  }

  /** The drawing alone, where its numbers stand elsewhere. */
  DomContent drawing(String id) {
    try {
      return div(plot(id)).withClass("plotted");
    } catch (UndrawableException e) {
      return div(p("Not drawn, since this computer has no fonts; its numbers are below."));
    }
  }

  /** Its numbers alone, for a page that must stay small. */
  DomContent undrawn() {
    return numbers.html();
  }

  private DomContent drawn(String id) {
    return div(plot(id), numbers.html()).withClass("plotted");
  }

  private DomContent plot(String id) {
    return figure(
        svg(Size.NARROW, id + "-n"),
        svg(Size.WIDE, id + "-w"),
        figcaption(Escaping.shortened(description, 1_000)));
  }

  private DomContent svg(Size size, String id) {
    return rawHtml(
        plot.svg(size, id, Escaping.shortened(title, 200), Escaping.shortened(description, 1_000)));
  }
}
