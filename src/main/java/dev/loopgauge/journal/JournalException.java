package dev.loopgauge.journal;

/** The journal can't be read or written. */
public final class JournalException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String hint;

  /**
   * A failure.
   *
   * @param text what was expected, what was found and where, one sentence
   * @param hint what to try, one sentence
   */
  public JournalException(String text, String hint) {
    super(text);
    this.hint = hint;
  }

  /**
   * A failure with its cause.
   *
   * @param text what was expected, what was found and where, one sentence
   * @param hint what to try, one sentence
   * @param cause what brought it about
   */
  public JournalException(String text, String hint, Throwable cause) {
    super(text, cause);
    this.hint = hint;
  }

  /** What to try. */
  public String hint() {
    return hint;
  }
}
