package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.CaptureException;
import java.util.concurrent.TimeUnit;

/** Gives up on a take whose sound has stopped flowing, or flows far too slowly. */
final class TakeLimit {
  private static final int STALLED_SECONDS = 2;
  private static final int SLOWER = 2;
  private static final int SPARE_SECONDS = 5;

  private final long limitSeconds;
  private final long started = System.nanoTime();
  private long lastMoved = started;
  private int lastProgress;

  TakeLimit(double takeSeconds) {
    limitSeconds = Math.round(SLOWER * takeSeconds) + SPARE_SECONDS;
  }

  /**
   * To be called every now and then.
   *
   * @param progress any count that grows as long as sound flows
   * @throws CaptureException with {@code TIMED_OUT}
   */
  void check(int progress) throws CaptureException {
    long now = System.nanoTime();
    if (progress != lastProgress) {
      lastProgress = progress;
      lastMoved = now;
    }
    if (now - lastMoved > TimeUnit.SECONDS.toNanos(STALLED_SECONDS)) {
      throw timedOut("The audio server has stopped: no sound for " + STALLED_SECONDS + " s.");
    }
    if (now - started > TimeUnit.SECONDS.toNanos(limitSeconds)) {
      throw timedOut("The take was not over after " + limitSeconds + " s: the server is too slow.");
    }
  }

  /** Waits a moment; a take is looked at every few ten milliseconds. */
  static void pause() throws CaptureException {
    try {
      Thread.sleep(20);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw timedOut("The take was interrupted.");
    }
  }

  private static CaptureException timedOut(String text) {
    return new CaptureException(
        CaptureException.Kind.TIMED_OUT,
        text,
        "Check the audio server and the programs on it, and measure again.");
  }
}
