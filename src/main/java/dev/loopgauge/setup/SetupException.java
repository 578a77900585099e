package dev.loopgauge.setup;

import dev.loopgauge.signal.HintedException;

/** A kept file is missing, unusable or in the way. */
public final class SetupException extends HintedException {
  private static final long serialVersionUID = 1L;

  /**
   * A failure.
   *
   * @param text what was expected, what was found and where, one sentence
   * @param hint what to try, one sentence
   */
  public SetupException(String text, String hint) {
    super("unusable-setup", text, hint);
  }
}
