package dev.loopgauge.capture;

/**
 * Something that happened during a take and leaves its recording in doubt.
 *
 * @param kind what happened
 * @param frame the frame of the take at which it was noticed, as near as the back end knows
 * @param frames how many frames it took, 0 where that isn't known
 * @param text one sentence: what happened
 */
public record Incident(Kind kind, int frame, int frames, String text) {
  /** An incident of unknown length. */
  public Incident(Kind kind, int frame, String text) {
    this(kind, frame, 0, text);
  }

  /** What can happen to a take that was nevertheless recorded to its end. */
  public enum Kind {
    /** The device or server lost time: frames are missing or were repeated. */
    DROPOUT,
    /** The server's block size changed during the take. */
    BLOCK_SIZE_CHANGED
  }
}
