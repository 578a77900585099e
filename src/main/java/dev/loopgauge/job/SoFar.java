package dev.loopgauge.job;

import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * What a long job has heard so far, for the case that the program is told to stop. Two may want to
 * finish it, the job itself and whoever stops the program; the first one does.
 */
public final class SoFar {
  private static final int SHOWING_SECONDS = 10;

  private final AtomicBoolean taken = new AtomicBoolean();
  private final CountDownLatch shown = new CountDownLatch(1);
  private final Consumer<Supplier<Answer>> watcher;
  private volatile Optional<Supplier<Answer>> answer = Optional.empty();

  /** Nobody looks meanwhile. */
  public SoFar() {
    this(now -> {});
  }

  /** Somebody looks meanwhile: they get what there is to show each time that there is more. */
  public SoFar(Consumer<Supplier<Answer>> watcher) {
    this.watcher = watcher;
  }

  /** Says what to show if the program were stopped now. Nothing it reads may change any more. */
  public void is(Supplier<Answer> now) {
    answer = Optional.of(now);
    watcher.accept(now);
  }

  /**
   * To be called by the job before it keeps and gives its own answer. Where the program is being
   * stopped already, this never returns, so that nothing is kept or shown twice.
   */
  public void finish() {
    if (!taken.compareAndSet(false, true)) {
      waitForTheEnd();
    }
  }

  private static void waitForTheEnd() {
    while (true) {
      try {
        TimeUnit.DAYS.sleep(1);
      } catch (InterruptedException e) {
        // The process is ending: there is nothing to go on with.
      }
    }
  }

  /** What to show because the program is told to stop; empty where there is nothing to show. */
  public Optional<Answer> taken() {
    return taken.compareAndSet(false, true) ? answer.map(Supplier::get) : Optional.empty();
  }

  /** The job's own answer was shown. */
  public void shown() {
    shown.countDown();
  }

  /** Waits until the job's own answer was shown, if it is being shown. */
  public void awaitShown() throws InterruptedException {
    if (taken.get()) {
      shown.await(SHOWING_SECONDS, TimeUnit.SECONDS);
    }
  }
}
