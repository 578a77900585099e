package dev.loopgauge.job;

/** The arguments, or a file they name, can't be used. Ends the command with exit code 2. */
public final class UsageException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String hint;

  /**
   * A refusal.
   *
   * @param text what was expected, what was found, where; one line
   * @param hint what to try; one line
   */
  public UsageException(String text, String hint) {
    super(text);
    this.hint = hint;
  }

  /** What to try. */
  public String hint() {
    return hint;
  }
}
