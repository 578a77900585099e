package dev.loopgauge.plan;

import java.util.Locale;

/** Where a delay comes from. */
public enum DelaySource {
  /** From a measurement. */
  MEASURED,
  /** From the chain file. */
  PREDICTED;

  /** The name in documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }
}
