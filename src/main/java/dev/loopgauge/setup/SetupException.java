package dev.loopgauge.setup;

/** A kept file is missing, unusable or in the way. */
public final class SetupException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String hint;

  /**
   * A failure.
   *
   * @param text what was expected, what was found and where, one sentence
   * @param hint what to try, one sentence
   */
  public SetupException(String text, String hint) {
    super(text);
    this.hint = hint;
  }

  /** What to try. */
  public String hint() {
    return hint;
  }
}
