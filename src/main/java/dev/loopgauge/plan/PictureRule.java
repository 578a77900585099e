package dev.loopgauge.plan;

import dev.loopgauge.chain.Standing;
import java.util.Locale;

/**
 * How far sound may stand from its picture. Positive means that the sound is early, as in ITU-R
 * BT.1359-1; limits are inclusive. EBU R37 and ATSC IS-191 are budgets for chains of equipment,
 * BT.1359 speaks of what people perceive. All figures are reported, not read at the issuers.
 */
public enum PictureRule {
  /** EBU R37-2007: the end of the chain, for emission. */
  EBU_R37("EBU R37", 40, 60),
  /** EBU R37-2007: each stage of the chain. */
  EBU_R37_STAGE("EBU R37, each stage", 5, 15),
  /**
   * ITU-R BT.1359-1 (1998), considering g and recommends 2: what is acceptable of the whole chain;
   * from +45 and -125 ms on it can be noticed.
   */
  ITU_BT1359("ITU-R BT.1359-1", 90, 185, 45, 125),
  /** ITU-R BT.1359-1, recommends 3: from the source of sound and picture to the reference point. */
  ITU_BT1359_SOURCE("ITU-R BT.1359-1, source to reference point", 25, 100),
  /** ITU-R BT.1359-1, recommends 4: from the selection of sources to the transmitter's input. */
  ITU_BT1359_TRANSMITTER("ITU-R BT.1359-1, selection to transmitter", 22.5, 30),
  /** ITU-R BT.1359-1, recommends 5: each segment that nobody controls. */
  ITU_BT1359_SEGMENT("ITU-R BT.1359-1, each segment", 2, 2),
  /** ATSC IS-191 (2003): the input of the encoder. */
  ATSC_IS191("ATSC IS-191", 15, 45),
  /** ITU-T J.100: exchange of programmes. */
  ITU_J100("ITU-T J.100", 20, 40);

  /** Keeps arithmetic rounding from pushing sound over a limit that it meets exactly, in ms. */
  private static final double ROUNDING_MS = 1e-9;

  private final String title;
  private final double earlyMs;
  private final double lateMs;
  private final double noticedEarlyMs;
  private final double noticedLateMs;

  PictureRule(String title, double earlyMs, double lateMs) {
    this(title, earlyMs, lateMs, earlyMs, lateMs);
  }

  PictureRule(
      String title, double earlyMs, double lateMs, double noticedEarlyMs, double noticedLateMs) {
    this.title = title;
    this.earlyMs = earlyMs;
    this.lateMs = lateMs;
    this.noticedEarlyMs = noticedEarlyMs;
    this.noticedLateMs = noticedLateMs;
  }

  /** The name on the command line and in documents: {@code ebu-r37}. */
  public String label() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The document it stands in, and for which part of the way. */
  public String title() {
    return title;
  }

  /** The earliest that sound may be, in ms before its picture. */
  public double earlyMs() {
    return earlyMs;
  }

  /** The latest that sound may be, in ms after its picture. */
  public double lateMs() {
    return lateMs;
  }

  /**
   * How sound stands that is so early: over beyond the limits, caution where it is acceptable but
   * can be noticed.
   *
   * @param soundEarlyMs how much earlier than its picture it comes; negative when later
   */
  public Standing standing(double soundEarlyMs) {
    if (beyond(soundEarlyMs, earlyMs, lateMs)) {
      return Standing.OVER;
    }
    return beyond(soundEarlyMs, noticedEarlyMs, noticedLateMs) ? Standing.CAUTION : Standing.WITHIN;
  }

  private static boolean beyond(double ms, double early, double late) {
    return ms > early + ROUNDING_MS || ms < -late - ROUNDING_MS;
  }
}
