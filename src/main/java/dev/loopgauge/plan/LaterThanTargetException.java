package dev.loopgauge.plan;

import dev.loopgauge.signal.UncheckedHintedException;

/** Paths were to meet one that arrives before another of them, which nothing can advance. */
public final class LaterThanTargetException extends UncheckedHintedException {
  private static final long serialVersionUID = 1L;

  LaterThanTargetException(String text, String hint) {
    super(WRONG_ARGUMENTS, text, hint);
  }
}
