package dev.loopgauge.plan;

import java.util.Locale;

/** Where a path runs. */
public enum Routing {
  /** Through the host, as the chain file has it. */
  THROUGH_HOST,
  /** By a second patch of the same input, taken before the host. */
  BEFORE_HOST,
  /** It never enters the host. */
  NO_HOST;

  /** The name in documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
