package dev.loopgauge.plan;

/** Paths were to meet one that arrives before another of them, which nothing can advance. */
public final class LaterThanTargetException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String hint;

  LaterThanTargetException(String text, String hint) {
    super(text);
    this.hint = hint;
  }

  /** What to try. */
  public String hint() {
    return hint;
  }
}
