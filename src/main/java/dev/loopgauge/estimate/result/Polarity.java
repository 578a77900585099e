package dev.loopgauge.estimate.result;

import java.util.Locale;

/** Whether the return has the sign of the reference. */
public enum Polarity {
  /** A push stays a push. */
  NORMAL,
  /** A push comes back as a pull. */
  INVERTED,
  /** The path turns the phase so that neither can be said. */
  UNDETERMINED;

  /** The polarity of a factor. */
  public static Polarity of(double gain) {
    return gain < 0 ? INVERTED : NORMAL;
  }

  /** The name in documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }
}
