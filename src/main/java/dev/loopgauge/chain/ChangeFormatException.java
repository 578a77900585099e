package dev.loopgauge.chain;

import dev.loopgauge.signal.UncheckedHintedException;

/** A change is no known one, or the chain has nothing that it could change. */
public final class ChangeFormatException extends UncheckedHintedException {
  private static final long serialVersionUID = 1L;

  public ChangeFormatException(String text, String hint) {
    super(WRONG_ARGUMENTS, text, hint);
  }
}
