package dev.loopgauge.capture;

import java.util.concurrent.TimeUnit;

/** Gives up on sound that has stopped flowing, or flows far too slowly. */
public final class FlowLimit {
  private static final int STALLED_SECONDS = 2;
  private static final int SLOWER = 2;
  private static final int SPARE_SECONDS = 5;

  private final String who;
  private final long limitSeconds;
  private final long started = System.nanoTime();
  private long lastMoved = started;
  private long lastProgress;

  private FlowLimit(String who, long limitSeconds) {
    this.who = who;
    this.limitSeconds = limitSeconds;
  }

  /**
   * For sound of a known length.
   *
   * @param who what lets it flow, the subject of a sentence: "The audio server"
   * @param seconds how long it is
   */
  public static FlowLimit ofTake(String who, double seconds) {
    return new FlowLimit(who, Math.round(SLOWER * seconds) + SPARE_SECONDS);
  }

  /** For sound that goes on for as long as it is wanted. */
  public static FlowLimit ofStream(String who) {
    return new FlowLimit(who, TimeUnit.DAYS.toSeconds(365));
  }

  /**
   * To be called every now and then.
   *
   * @param progress any count that grows as long as sound flows
   * @throws CaptureException with {@code TIMED_OUT}
   */
  public void check(long progress) throws CaptureException {
    long now = System.nanoTime();
    if (progress != lastProgress) {
      lastProgress = progress;
      lastMoved = now;
    }
    if (now - lastMoved > TimeUnit.SECONDS.toNanos(STALLED_SECONDS)) {
      throw timedOut(who + " has stopped: no sound for " + STALLED_SECONDS + " s.");
    }
    if (now - started > TimeUnit.SECONDS.toNanos(limitSeconds)) {
      throw timedOut("The take was not over after " + limitSeconds + " s: the server is too slow.");
    }
  }

  /**
   * Waits a moment; sound is looked at every few ten milliseconds.
   *
   * @throws CaptureException with {@code TIMED_OUT} when the thread is interrupted
   */
  public static void pause() throws CaptureException {
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
