package dev.loopgauge.screen.desk;

import dev.loopgauge.job.UsageException;
import java.util.Optional;

/** The one thread that jobs run on, one at a time, so that no browser ever waits for one. */
final class JobThread {
  /** A job of the screen. */
  interface Work {
    /** Does it, and gives what is to be told of it once another one may begin. */
    Runnable run();
  }

  private Optional<Thread> running = Optional.empty();
  private String title = "";

  /**
   * Begins a job.
   *
   * @param named what it is, in words
   * @param first what must be so before it runs, done at once
   * @throws UsageException when another one runs
   */
  synchronized void begin(String named, Runnable first, Work work) {
    if (running.isPresent()) {
      throw new UsageException(title + " is under way already", "wait for it, or stop it");
    }
    Thread thread = new Thread(() -> run(work), "loopgauge-screen-job");
    thread.setDaemon(true);
    running = Optional.of(thread);
    title = named;
    first.run();
    thread.start();
  }

  private void run(Work work) {
    Runnable tell = () -> {};
    try {
      tell = work.run();
    } finally {
      ended(tell);
    }
  }

  /** Nobody is told that it is over before another one may begin. */
  private synchronized void ended(Runnable tell) {
    running = Optional.empty();
    notifyAll();
    tell.run();
  }

  /** Whether a job runs. */
  synchronized boolean isBusy() {
    return running.isPresent();
  }

  /** Wakes the job from whatever it waits for. */
  synchronized void interrupt() {
    running.ifPresent(Thread::interrupt);
  }

  /** Waits until no job runs, at most this many ms. */
  synchronized void awaitIdle(long ms) throws InterruptedException {
    long end = System.nanoTime() + ms * 1_000_000;
    long left = ms;
    while (running.isPresent() && left > 0) {
      wait(left);
      left = (end - System.nanoTime()) / 1_000_000;
    }
  }
}
