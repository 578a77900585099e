package dev.loopgauge.capture.simulated;

/** A fault that there is not, or whose value can't be used. */
public final class FaultFormatException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final String hint;

  FaultFormatException(String text, String hint) {
    super(text);
    this.hint = hint;
  }

  /** What to try. */
  public String hint() {
    return hint;
  }
}
