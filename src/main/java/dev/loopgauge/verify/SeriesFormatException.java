package dev.loopgauge.verify;

/**
 * A file of readings says something that can't be, or nothing that can be understood. The message
 * is one line, {@code file:line: expected ..., found ...}, counted from 1.
 */
public final class SeriesFormatException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String hint;

  SeriesFormatException(String file, long line, String expected, String found, String hint) {
    super(file + ":" + line + ": expected " + expected + ", found " + found);
    this.hint = hint;
  }

  /** What to try. */
  public String hint() {
    return hint;
  }
}
