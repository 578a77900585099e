package dev.loopgauge.report.plot;

/**
 * This computer can't draw: Java finds no fonts, or lacks the part of itself that measures text.
 */
public final class UndrawableException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  UndrawableException(Throwable cause) {
    super("expected a font to lay out a plot with, found none", cause);
  }
}
