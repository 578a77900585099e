package dev.loopgauge.report.plot;

import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.util.function.Consumer;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jfree.svg.SVGGraphics2D;

/**
 * Draws one plot. Each text is given the width it was laid out for, so that a reader's font can't
 * make two of them run into each other.
 */
final class SvgCanvas {
  /**
   * What the page decides, what is so anyway, what no eye sees, and clips to the whole plot, the
   * first of all.
   */
  private static final Pattern SPARE =
      Pattern.compile(
          " font-family: [^;]*;|(?:fill|stroke)-opacity: ?1\\.0;| clip-path='url\\([^)]*-clip-0\\)'"
              + "| font-size: 12px;|stroke-linecap:square;|stroke-miterlimit:10;"
              + "|;?shape-rendering:crispEdges");

  private static final Pattern TEXT = Pattern.compile("<text ([^>]*)>([^<]*)</text>");
  private static final Pattern WHOLE = Pattern.compile("<svg [^>]*>");

  private final SVGGraphics2D canvas;

  private SvgCanvas(int width, int height, String id) {
    canvas = new SVGGraphics2D(width, height);
    canvas.setDefsKeyPrefix(id);
    canvas.setGeomDoubleConverter(SvgCanvas::brief);
    canvas.setTransformDoubleConverter(SvgCanvas::brief);
  }

  /**
   * The plot as an element of a page.
   *
   * @param id a name that no other element of the page begins with
   * @param opening the element's own tag, and what it says of itself
   */
  static String draw(Consumer<Graphics2D> plot, int width, int height, String id, String opening) {
    SvgCanvas drawing = new SvgCanvas(width, height, id);
    plot.accept(drawing.canvas);
    String svg = Ink.intoCss(drawing.canvas.getSVGElement());
    String inked = SPARE.matcher(svg).replaceAll("");
    String fitted = TEXT.matcher(inked).replaceAll(drawing::withWidth);
    return WHOLE.matcher(fitted).replaceFirst(Matcher.quoteReplacement(opening));
  }

  private String withWidth(MatchResult text) {
    FontMetrics metrics = canvas.getFontMetrics(Charts.FONT);
    double width = metrics.getStringBounds(unescaped(text.group(2)), canvas).getWidth();
    return Matcher.quoteReplacement(
        "<text textLength='%s' lengthAdjust='spacingAndGlyphs' %s>%s</text>"
            .formatted(brief(width), text.group(1), text.group(2)));
  }

  private static String unescaped(String text) {
    return text.replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&apos;", "'")
        .replace("&amp;", "&");
  }

  /** A tenth of a pixel is finer than any screen shows. */
  private static String brief(double value) {
    double tenths = Math.rint(value * 10) / 10;
    return tenths == Math.rint(tenths) ? Long.toString((long) tenths) : Double.toString(tenths);
  }
}
