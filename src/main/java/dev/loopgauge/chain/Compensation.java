package dev.loopgauge.chain;

import java.util.Locale;

/** Whether the desk or host delays the other paths to match a stage. */
public enum Compensation {
  /** It does. */
  YES,
  /** It does not. */
  NO,
  /** Nobody knows yet. */
  UNKNOWN;

  /** The name in chain files. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }
}
