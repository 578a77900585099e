package dev.loopgauge.capture;

/**
 * Something that happened during a take and leaves its recording in doubt.
 *
 * @param kind what happened
 * @param frame the frame of the take at which it was noticed, as near as the back end knows
 * @param text one sentence: what happened, and how often
 */
public record Incident(Kind kind, int frame, String text) {
  /** What can happen to a take that was nevertheless recorded to its end. */
  public enum Kind {
    /** The device or server lost time: frames are missing or were repeated. */
    DROPOUT,
    /** The server's block size changed during the take. */
    BLOCK_SIZE_CHANGED
  }
}
