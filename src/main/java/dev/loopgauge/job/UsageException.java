package dev.loopgauge.job;

import dev.loopgauge.signal.UncheckedHintedException;

/** The arguments, or a file they name, can't be used. Ends the command with exit code 2. */
public final class UsageException extends UncheckedHintedException {
  private static final long serialVersionUID = 1L;

  /**
   * A refusal.
   *
   * @param text what was expected, what was found, where; one line
   * @param hint what to try; one line
   */
  public UsageException(String text, String hint) {
    super(WRONG_ARGUMENTS, text, hint);
  }
}
