package dev.loopgauge.journal;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Which part of a show's day a measurement belongs to. */
public enum When {
  /** Before doors. */
  BEFORE,
  /** While the show runs. */
  DURING,
  /** After the show. */
  AFTER;

  /** The name on the command line, in documents and in stores. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The part of the day with this label; empty where there is none. */
  public static Optional<When> labelled(String label) {
    return Arrays.stream(values()).filter(when -> when.label().equals(label)).findFirst();
  }
}
