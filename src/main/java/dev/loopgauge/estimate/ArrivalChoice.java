package dev.loopgauge.estimate;

import java.util.Locale;

/** Which arrival is measured where there are several. */
public enum ArrivalChoice {
  /** The strongest; where another is within 6 dB of it, no verdict follows. */
  UNDECIDED,
  /** The strongest, whatever else there is. */
  STRONGEST,
  /** The first of all that were found. */
  FIRST;

  /** The name in options. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }
}
