package dev.loopgauge.report.html;

import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.section;

import j2html.tags.DomContent;
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

  /** The section. */
  DomContent html() {
    return section(h2(heading).withId(id), each(content, part -> part)).attr("aria-labelledby", id);
  }
}
