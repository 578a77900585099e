package dev.loopgauge.journal.store;

import java.sql.SQLException;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.sqlite.BusyHandler;

/**
 * How programs that use one SQLite file take turns. Who finds it locked asks again after a random
 * pause; who has written pauses for longer than that before it writes again, so that whoever waits
 * comes between. SQLite's own way of waiting soon asks only ten times a second, and a program that
 * writes without a pause then keeps others out by chance alone.
 */
final class TakingTurns extends BusyHandler {
  /**
   * How long to wait for others. The longest that a reader was seen to hold off a writer: 16 s, a
   * check of 100,000 entries on two busy cores (DEVELOPERS.md, "Speed and memory").
   */
  static final int PATIENCE_MS = 30_000;

  /** So short that asking costs little and a turn of some milliseconds isn't missed. */
  private static final long LONGEST_PAUSE_NANOS = TimeUnit.MILLISECONDS.toNanos(10);

  private final long patienceNanos;
  private long waitingSince;

  /** With the usual patience. */
  TakingTurns() {
    this(PATIENCE_MS);
  }

  TakingTurns(long patienceMs) {
    patienceNanos = TimeUnit.MILLISECONDS.toNanos(patienceMs);
  }

  /** Asked by SQLite each time it finds the file locked; gives 0 to give up. */
  @Override
  protected int callback(int asked) throws SQLException {
    long now = System.nanoTime();
    if (asked == 0) {
      waitingSince = now;
    }
    LockSupport.parkNanos(1 + ThreadLocalRandom.current().nextLong(LONGEST_PAUSE_NANOS));
    return now - waitingSince < patienceNanos && !Thread.currentThread().isInterrupted() ? 1 : 0;
  }

  /** Lets others have their turn. */
  static void letOthers() {
    LockSupport.parkNanos(2 * LONGEST_PAUSE_NANOS);
  }
}
