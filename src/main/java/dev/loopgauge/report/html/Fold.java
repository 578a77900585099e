package dev.loopgauge.report.html;

import static j2html.TagCreator.details;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.summary;

import j2html.tags.DomContent;
import j2html.tags.specialized.DetailsTag;
import java.util.List;

/** A part of the page that can be folded away. What is folded is not printed. */
final class Fold {
  private Fold() {}

  /**
   * The part. Links lead to its content, so that a browser unfolds it for whoever follows one.
   *
   * @param id a name that nothing else in the page has
   * @param open whether it is unfolded at first
   */
  static DomContent of(String id, boolean open, DomContent heading, List<DomContent> content) {
    DetailsTag fold =
        details(
            summary(h2(heading)), div(each(content, part -> part)).withId(id).withClass("folded"));
    return open ? fold.attr("open") : fold;
  }
}
