package dev.loopgauge.capture;

/**
 * Sees a take grow. It is told by the thread that waits for the take, every few ten milliseconds,
 * and may write to a screen.
 */
public interface TakeWatch {
  /** Sees nothing. */
  TakeWatch NONE = (returns, frames) -> {};

  /**
   * Some more has been recorded.
   *
   * @param returns one array for each return, filled up to {@code frames}; not to be changed
   * @param frames how many frames have been recorded
   */
  void recorded(float[][] returns, int frames);
}
