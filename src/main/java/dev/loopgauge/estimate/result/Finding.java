package dev.loopgauge.estimate.result;

/**
 * Something about a capture that a person must know.
 *
 * @param code what it is
 * @param refuses whether no number can be trusted because of it
 * @param text what was found, one sentence with its figures
 * @param hint what to look at or try, in the words of someone standing at the desk
 */
public record Finding(FindingCode code, boolean refuses, String text, String hint) {
  /** A finding because of which no number can be trusted. */
  public static Finding refusing(FindingCode code, String text, String hint) {
    return new Finding(code, true, text, hint);
  }

  /** A finding beside which the number can be trusted. */
  public static Finding remark(FindingCode code, String text, String hint) {
    return new Finding(code, false, text, hint);
  }
}
