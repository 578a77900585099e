package dev.loopgauge.report.plot;

import java.awt.Graphics2D;

/** A plot that can be drawn at each size. */
public abstract class Plot {
  private static final java.util.regex.Pattern MARKUP = java.util.regex.Pattern.compile("[&<>]");

  /** Draws it at a size, from the point 0, 0. */
  abstract void draw(Graphics2D canvas, Size size);

  /** Its height in CSS pixels. */
  abstract int height(Size size);

  /**
   * The plot as one {@code <svg>} element, without a script, a style sheet or a reference to
   * anything outside.
   *
   * @param id a name for it, unique in its page: letters, digits and hyphens
   * @param title its name for those who can't see it
   * @param description what it shows, in a sentence or two
   * @throws UndrawableException when this computer has no fonts
   */
  public String svg(Size size, String id, String title, String description) {
    int height = height(size);
    String opening =
        "<svg xmlns='http://www.w3.org/2000/svg' class='plot %s' role='img' viewBox='0 0 %s %s'"
                .formatted(size.label(), size.width(), height)
            + " aria-labelledby='%s-t %s-d'><title id='%s-t'>%s</title><desc id='%s-d'>%s</desc>"
                .formatted(id, id, id, escaped(title), id, escaped(description));
    try {
      return SvgCanvas.draw(g -> draw(g, size), size.width(), height, id + "-", opening);
    } catch (LinkageError | InternalError e) {
      throw new UndrawableException(e);
    }
  }

  private static String escaped(String text) {
    return MARKUP
        .matcher(text)
        .replaceAll(
            found ->
                switch (found.group()) {
                  case "&" -> "&amp;";
                  case "<" -> "&lt;";
                  default -> "&gt;";
                });
  }
}
