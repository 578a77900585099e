package dev.loopgauge.chain;

import java.util.Locale;

/** Who hears a path. */
public enum Listener {
  /** A performer with in-ear monitors, who also hears the own voice through the skull. */
  IN_EAR,
  /** A performer before a floor wedge. */
  WEDGE,
  /** The audience; its front rows also hear the stage direct. */
  HOUSE,
  /** People far away, who hear nothing of the stage itself; only a picture can show the delay. */
  STREAM;

  /** The name in chain files and documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
