package dev.loopgauge.signal;

/** A failure of input or output that says what to try. */
public abstract class HintedException extends Exception implements Hinted {
  private static final long serialVersionUID = 1L;

  private final String code;
  private final String hint;

  /**
   * A failure.
   *
   * @param code its name in documents
   * @param text what happened, one sentence: expected, found, where
   * @param hint what to try, one sentence
   */
  protected HintedException(String code, String text, String hint) {
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
