package dev.loopgauge.chain;

import java.util.Locale;

/** How a delay stands against a listener's limits. */
public enum Standing {
  /** Within all limits. */
  WITHIN,
  /** Beyond where some begin to notice, not beyond the limit. */
  CAUTION,
  /** Beyond the limit. */
  OVER;

  /** The name in documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }
}
