package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.UncheckedHintedException;

/** A fault that there is not, or whose value can't be used. */
public final class FaultFormatException extends UncheckedHintedException {
  private static final long serialVersionUID = 1L;

  FaultFormatException(String text, String hint) {
    super(WRONG_ARGUMENTS, text, hint);
  }
}
