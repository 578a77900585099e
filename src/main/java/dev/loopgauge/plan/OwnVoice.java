package dev.loopgauge.plan;

import java.util.Locale;

/**
 * A delayed copy of the own voice, as talkers find it: Agnew and Thornton, J Am Acad Audiol 11(6),
 * 2000 (the issuer's abstract).
 */
public enum OwnVoice {
  /** Earlier than most notice. */
  UNNOTICED("earlier than it is noticed (3-5 ms)"),
  /** From 3 ms on. */
  NOTICEABLE("noticeable (from 3-5 ms on)"),
  /** Above 10 ms. */
  OBJECTIONABLE("objectionable (above 10 ms)");

  /** Where the figures come from, a few words for the screen. */
  public static final String SOURCE = "Agnew & Thornton 2000";

  private static final double NOTICEABLE_MS = 3;
  private static final double OBJECTIONABLE_MS = 10;

  private final String words;

  OwnVoice(String words) {
    this.words = words;
  }

  /** How talkers find a copy with this delay, in ms. */
  public static OwnVoice at(double delayMs) {
    if (delayMs > OBJECTIONABLE_MS) {
      return OBJECTIONABLE;
    }
    return delayMs >= NOTICEABLE_MS ? NOTICEABLE : UNNOTICED;
  }

  /** The name in documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** A few words for the screen. */
  public String words() {
    return words;
  }
}
