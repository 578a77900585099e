package dev.loopgauge.estimate.result;

import java.util.List;

/**
 * Something about a capture that a person must know.
 *
 * @param code what it is
 * @param refuses whether no number can be trusted because of it
 * @param judged whether the verdict counts it; false where it is only told
 * @param text what was found, one sentence with its figures
 * @param hint what to look at or try, in the words of someone standing at the desk
 */
public record Finding(FindingCode code, boolean refuses, boolean judged, String text, String hint) {
  /** A finding that the verdict counts. */
  public Finding(FindingCode code, boolean refuses, String text, String hint) {
    this(code, refuses, true, text, hint);
  }

  /** A finding because of which no number can be trusted. */
  public static Finding refusing(FindingCode code, String text, String hint) {
    return new Finding(code, true, text, hint);
  }

  /** Whether any of some findings refuses. */
  static boolean anyRefuses(List<Finding> findings) {
    for (Finding finding : findings) {
      if (finding.refuses()) {
        return true;
      }
    }
    return false;
  }

  /** A finding beside which the number can be trusted. */
  public static Finding remark(FindingCode code, String text, String hint) {
    return new Finding(code, false, text, hint);
  }

  /** A finding that is only told: the verdict doesn't count it. */
  public static Finding told(FindingCode code, String text, String hint) {
    return new Finding(code, false, false, text, hint);
  }
}
