package dev.loopgauge.chain;

/**
 * Something that is wrong or missing in a valid chain file.
 *
 * @param kind whether it is wrong or missing
 * @param text what, one sentence
 * @param hint what to try
 */
public record CheckFinding(Kind kind, String text, String hint) {
  /** How much it matters. */
  public enum Kind {
    /** It can't be meant so. */
    WRONG,
    /** Without it less can be said. */
    MISSING
  }

  static CheckFinding wrong(String text, String hint) {
    return new CheckFinding(Kind.WRONG, text, hint);
  }

  static CheckFinding missing(String text, String hint) {
    return new CheckFinding(Kind.MISSING, text, hint);
  }
}
