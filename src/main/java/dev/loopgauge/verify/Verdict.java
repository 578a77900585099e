package dev.loopgauge.verify;

import java.util.Locale;

/** Measured against budget. */
public enum Verdict {
  /** The whole interval of uncertainty lies within the allowed difference. */
  WITHIN,
  /** It lies wholly before the allowed difference. */
  EARLY,
  /** It lies wholly after it. */
  LATE,
  /**
   * It straddles a limit, or the number holds the sound card's own delay, or another delay could be
   * meant as well.
   */
  UNDECIDED;

  /** The name in documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }
}
