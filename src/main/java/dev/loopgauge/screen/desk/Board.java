package dev.loopgauge.screen.desk;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.screen.state.ScreenState;
import java.util.concurrent.TimeUnit;

/** Holds the newest state, written once for all who read it. Any thread may read or wait. */
public final class Board {
  /**
   * A state as it is sent.
   *
   * @param number counts up with each state
   * @param json the state, on one line
   */
  public record Edition(long number, String json) {}

  private Edition newest = new Edition(0, "{}");
  private boolean closed;

  /** Puts up another state. */
  synchronized void put(ScreenState state) {
    String json = Json.line(Document.json(state));
    if (!json.equals(newest.json())) {
      newest = new Edition(newest.number() + 1, json);
      notifyAll();
    }
  }

  /** Nothing more will come. */
  synchronized void close() {
    closed = true;
    notifyAll();
  }

  /** Whether nothing more will come. */
  public synchronized boolean isClosed() {
    return closed;
  }

  /** The newest state. */
  public synchronized Edition newest() {
    return newest;
  }

  /** Waits for a state after this one, at most this many ms; the newest as it is then. */
  public synchronized Edition after(long number, long ms) throws InterruptedException {
    long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(ms);
    long left = ms;
    while (newest.number() <= number && !closed && left > 0) {
      wait(left);
      left = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
    }
    return newest;
  }
}
