package dev.loopgauge.report.html;

import static j2html.TagCreator.caption;
import static j2html.TagCreator.each;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;

/**
 * A table with a caption, a head and rows that begin with their name. Columns of figures are set to
 * the right.
 */
final class Grid {
  private final String caption;
  private final List<String> heads;
  private final List<List<String>> rows = new ArrayList<>();
  private int wordColumns = 1;

  /** An empty table; the first of the heads stands over the names. */
  Grid(String caption, String... heads) {
    this.caption = caption;
    this.heads = List.of(heads);
  }

  /** Says how many of the first columns are words; the others are figures. */
  Grid words(int columns) {
    wordColumns = columns;
    return this;
  }

  /** Adds a row. */
  Grid row(String... cells) {
    if (cells.length != heads.size()) {
      throw new IllegalArgumentException(
          "expected " + heads.size() + " cells, not " + cells.length);
    }
    rows.add(List.of(cells));
    return this;
  }

  /** Whether it has no rows. */
  boolean isEmpty() {
    return rows.isEmpty();
  }

  /** The table. */
  DomContent html() {
    return table(
        caption(caption),
        thead(tr(each(heads, this::head))),
        tbody(each(rows, row -> tr(each(row, this::cell)))));
  }

  private DomContent head(int column, String text) {
    return th(text).attr("scope", "col").withCondClass(isFigures(column), "figure");
  }

  private DomContent cell(int column, String text) {
    if (column == 0) {
      return th(Escaping.brief(text)).attr("scope", "row");
    }
    return isFigures(column) ? td(text).withClass("figure") : td(Escaping.brief(text));
  }

  private boolean isFigures(int column) {
    return column >= wordColumns;
  }
}
