package dev.loopgauge.journal;

import dev.loopgauge.signal.HintedException;

/** The journal can't be read or written. */
public final class JournalException extends HintedException {
  private static final long serialVersionUID = 1L;

  /**
   * A failure.
   *
   * @param text what was expected, what was found and where, one sentence
   * @param hint what to try, one sentence
   */
  public JournalException(String text, String hint) {
    super("journal", text, hint);
  }

  /**
   * A failure with its cause.
   *
   * @param text what was expected, what was found and where, one sentence
   * @param hint what to try, one sentence
   * @param cause what brought it about
   */
  public JournalException(String text, String hint, Throwable cause) {
    super("journal", text, hint);
    initCause(cause);
  }
}
