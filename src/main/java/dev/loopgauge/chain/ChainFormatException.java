package dev.loopgauge.chain;

/**
 * A chain file says something that can't be, or nothing that can be understood. The message is one
 * line, {@code file:line:column: expected ..., found ...}, both counted from 1.
 */
public final class ChainFormatException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String hint;

  ChainFormatException(
      String file, int line, int column, String expected, String found, String hint) {
    super(file + ":" + line + ":" + column + ": expected " + expected + ", found " + found);
    this.hint = hint;
  }

  /** What to try. */
  public String hint() {
    return hint;
  }
}
