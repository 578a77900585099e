package dev.loopgauge.plan;

import java.util.Locale;

/** What comes of two copies of a sound that are heard together. */
public enum Blend {
  /** Nothing that can be heard. */
  SAFE,
  /** One sound, with a comb filter on it. */
  COLOURS,
  /** Two sounds. */
  ECHO;

  /** The name in documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }
}
