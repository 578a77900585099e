package dev.loopgauge.chain;

import java.util.Locale;

/**
 * Who plays or sings on a path: the groups of Lester and Boley, "The Effects of Latency on Live
 * Sound Monitoring", AES 123rd Convention, 2007, paper 7198, Table 1 (reported).
 */
public enum Instrument {
  /** A singer or speaker. */
  VOICE,
  /** A saxophone. */
  SAX,
  /** A guitar. */
  GUITAR,
  /** A drum kit. */
  DRUMS,
  /** An electric bass. */
  BASS,
  /** A keyboard. */
  KEYBOARD;

  /** The name in chain files. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }
}
