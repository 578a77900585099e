package dev.loopgauge.chain;

/** A change is no known one, or the chain has nothing that it could change. */
public final class ChangeFormatException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final String hint;

  public ChangeFormatException(String text, String hint) {
    super(text);
    this.hint = hint;
  }

  /** What to try. */
  public String hint() {
    return hint;
  }
}
