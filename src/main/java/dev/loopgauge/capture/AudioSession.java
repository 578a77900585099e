package dev.loopgauge.capture;

/**
 * Open channels. Within one session the offset between what is played and what is recorded stays
 * the same from take to take; between sessions it may differ (see {@link
 * SessionInfo#sampleLocked}). Used by one thread at a time.
 */
public interface AudioSession extends AutoCloseable {
  /** What was opened. */
  SessionInfo info();

  /**
   * Plays and records at once, and returns when the take is over. It takes little longer than the
   * take lasts: an adapter gives up, with {@link CaptureException.Kind#TIMED_OUT}, once the sound
   * stops flowing.
   *
   * @param take one signal for each send of the session, at the session's rate
   * @return the whole recording: exactly {@link Take#frames} frames of each return
   * @throws CaptureException when a frame could not be played or recorded, or the device went away
   * @throws IllegalArgumentException when the take doesn't fit the session, see {@link
   *     Take#checkFits}
   */
  Capture capture(Take take) throws CaptureException;

  /**
   * Records without end, the sends silent, and returns when the listener has enough, or where a
   * recording is over that is read instead. Memory doesn't grow however long that takes. Lost
   * frames don't end it: they are counted and told.
   *
   * @param listener called by this thread
   * @throws CaptureException when the device went away, or the session can only record takes
   */
  default void stream(BlockListener listener) throws CaptureException {
    throw new CaptureException(
        CaptureException.Kind.UNSUPPORTED_FORMAT,
        info().backend() + " records takes here, not a stream.",
        "Choose another back end.");
  }

  /**
   * Makes a session that lost sound usable again, where it isn't. The offset between playing and
   * recording may be another one from then on.
   *
   * @throws CaptureException when the devices no longer open as they did
   */
  default void renew() throws CaptureException {}

  /** Lets go of the channels. Never throws. */
  @Override
  void close();
}
