package dev.loopgauge.job.live;

import dev.loopgauge.job.WatchListener;
import dev.loopgauge.report.measured.KeptRecord;
import dev.loopgauge.report.watch.WatchLine;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;

/**
 * Hands on the events of a watch; where that was asked, once each was kept in the journal. That is
 * done on a thread of its own, so that a slow disk or database takes no time from the sound. Some
 * events may wait; one more is told at once as not kept.
 */
final class WatchKeeper {
  /** Each path of 64 may start and end something at once. */
  private static final int MOST_WAITING = 128;

  /** Less than Ctrl-C leaves until the program is ended by force. */
  private static final long STOPPED_SECONDS = 7;

  /** Longer than any database makes one wait that is there at all. */
  private static final long OVER_SECONDS = 120;

  private final Optional<UnaryOperator<WatchLine>> journal;
  private final WatchListener listener;
  private final ThreadPoolExecutor keeping;
  private volatile boolean failed;

  /**
   * Nothing has happened yet.
   *
   * @param journal keeps an event and gives it with whether it was kept; empty to keep none
   * @param listener hears each event, from either thread
   */
  WatchKeeper(Optional<UnaryOperator<WatchLine>> journal, WatchListener listener) {
    this.journal = journal;
    this.listener = listener;
    this.keeping =
        new ThreadPoolExecutor(
            1, 1, 0, TimeUnit.SECONDS, new ArrayBlockingQueue<>(MOST_WAITING), WatchKeeper::daemon);
  }

  private static Thread daemon(Runnable task) {
    Thread thread = new Thread(task, "loopgauge-watch-journal");
    thread.setDaemon(true);
    return thread;
  }

  /** An event that waits to be kept. */
  private record Waiting(WatchKeeper keeper, UnaryOperator<WatchLine> journal, WatchLine event)
      implements Runnable {
    @Override
    public void run() {
      keeper.tell(journal.apply(event));
    }
  }

  /** An event happens. */
  void happens(WatchLine event) {
    if (journal.isEmpty()) {
      listener.happens(event);
      return;
    }
    try {
      keeping.execute(new Waiting(this, journal.get(), event));
    } catch (RejectedExecutionException full) {
      tell(notKept(event));
    }
  }

  private void tell(WatchLine event) {
    failed |= event.kept().flatMap(KeptRecord::error).isPresent();
    listener.happens(event);
  }

  private static WatchLine notKept(WatchLine event) {
    return event.withKept(KeptRecord.not("The journal was too slow."));
  }

  /** Whether an event could not be kept, once all is finished. */
  boolean hasFailed() {
    return failed;
  }

  /**
   * Keeps what still waits; what can't be kept in time is told as that.
   *
   * @param stopped whether somebody waits for the end
   */
  void finish(boolean stopped) {
    long seconds = stopped ? STOPPED_SECONDS : OVER_SECONDS;
    keeping.shutdown();
    if (ends(seconds)) {
      return;
    }
    for (Runnable waiting : keeping.shutdownNow()) {
      tell(notKept(((Waiting) waiting).event()));
    }
    ends(1);
    failed = true;
    listener.notes("NOT KEPT: the journal did not answer for " + seconds + " s.");
  }

  private boolean ends(long seconds) {
    try {
      return keeping.awaitTermination(seconds, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }
}
