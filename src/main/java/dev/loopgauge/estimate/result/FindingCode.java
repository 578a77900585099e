package dev.loopgauge.estimate.result;

import java.util.Locale;

/** What can be wrong with a capture, by the names that documents use. */
public enum FindingCode {
  /** The return holds nothing of the stimulus. */
  NO_RETURN,
  /** The return holds the stimulus, but too faint to be placed. */
  WEAK_RETURN,
  /** The return was driven into full scale. */
  CLIPPED,
  /** Sound was lost or repeated. */
  DROPOUT,
  /**
   * The path's level moves by itself. No other code says so, and a script must be able to tell it
   * from lost sound: the cure is another one.
   */
  LEVEL_MOVES,
  /** Play and record run on different clocks. */
  CLOCKS_NOT_LOCKED,
  /** Two arrivals are so alike in level that it is open which one is meant. */
  TWO_ARRIVALS,
  /** The path delays frequencies differently, so that one number says less. */
  DISPERSIVE,
  /** The polarity is inverted. */
  INVERTED,
  /** The two recordings have different rates. */
  RATE_MISMATCH,
  /** The reference is silent or is not the signal played. */
  NO_REFERENCE,
  /** The delay is longer than was searched. */
  BEYOND_WINDOW,
  /** The sound card's own delay is in the number. */
  UNCALIBRATED,
  /** Reference and return are sample for sample alike. */
  SAME_SIGNAL;

  /** The name in documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
