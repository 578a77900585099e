package dev.loopgauge.signal;

/** A refusal of what somebody asked for that says what to try. */
public abstract class UncheckedHintedException extends RuntimeException implements Hinted {
  private static final long serialVersionUID = 1L;

  /** The code of a refusal of arguments. */
  protected static final String WRONG_ARGUMENTS = "wrong-arguments";

  private final String code;
  private final String hint;

  /**
   * A refusal.
   *
   * @param code its name in documents
   * @param text what happened, one sentence: expected, found, where
   * @param hint what to try, one sentence
   */
  protected UncheckedHintedException(String code, String text, String hint) {
    super(text);
    this.code = code;
    this.hint = hint;
  }

  @Override
  public final String code() {
    return code;
  }

  @Override
  public final String hint() {
    return hint;
  }
}
