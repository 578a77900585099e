package dev.loopgauge.report.html;

import static j2html.TagCreator.p;
import static j2html.TagCreator.text;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;

/**
 * A part of the page under a heading of its own.
 *
 * @param id a name that nothing else in the page has
 */
record Section(String id, String heading, List<DomContent> content) {
  /** A section of these. */
  static Section of(String id, String heading, DomContent... content) {
    return new Section(id, heading, List.of(content));
  }

  /** The section with a line that says where it is from. */
  Section from(String source) {
    List<DomContent> all = new ArrayList<>(content);
    all.add(0, p(text("From "), Escaping.brief(source)).withClass("made"));
    return new Section(id, heading, all);
  }

  /** The section. */
  DomContent html(boolean open) {
    return Fold.of(id, open, text(heading), content);
  }
}
