package dev.loopgauge.estimate.result;

import java.util.Locale;

/** How the sound card's own delay was kept out of the result. */
public enum Method {
  /** A reference channel took the same way through the card, so that it cancels. */
  REFERENCED,
  /** A patch cable was measured in the same open session and taken off. */
  CALIBRATED,
  /** The server locks play and record by the sample; a stored patch cable was taken off. */
  SAMPLE_LOCKED,
  /** It was not: the card's own delay is in the number. */
  UNCALIBRATED;

  /** The name in documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
