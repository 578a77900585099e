package dev.loopgauge.job.event;

import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.WatchListener;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.watch.WatchLine;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;

/**
 * Runs a command on each event of a watch, one at a time, with the event as JSON on its standard
 * input. What it does wrong is told, and ends nothing.
 */
public final class OnEvent implements WatchListener, AutoCloseable {
  /**
   * So long a command may take; common practice, no source. Half of what is left after Ctrl-C to
   * end in order ({@code cli.EndHook}).
   */
  private static final Duration LIMIT = Duration.ofSeconds(5);

  /**
   * The most events that may wait: two of each kind, and a start's end. More come of a broken rig.
   */
  static final int WAITING = 16;

  private final LimitedRun run;
  private final Consumer<String> tell;
  private final AtomicInteger leftOut = new AtomicInteger();
  private final ThreadPoolExecutor worker =
      new ThreadPoolExecutor(
          1,
          1,
          0,
          TimeUnit.SECONDS,
          new ArrayBlockingQueue<>(WAITING),
          OnEvent::thread,
          (event, full) -> leftOut.incrementAndGet());

  /**
   * For one command.
   *
   * @param tell is told what goes wrong, one sentence, from any thread
   */
  OnEvent(LimitedRun run, Consumer<String> tell) {
    this.run = run;
    this.tell = tell;
  }

  /**
   * For a command as it was typed.
   *
   * @param tell is told what goes wrong, one sentence, from any thread
   * @throws UsageException when it can't be split, or its program isn't there
   */
  public static OnEvent running(String command, Consumer<String> tell) {
    List<String> words = CommandWords.of(command);
    if (!Programs.isThere(words.get(0), System.getenv("PATH"))) {
      throw new UsageException(
          "--on-event: there is no program '" + words.get(0) + "' that may be run",
          "name it with its folder, and make it executable");
    }
    return new OnEvent(new LimitedRun(words, LIMIT), tell);
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "loopgauge-on-event");
    thread.setDaemon(true);
    return thread;
  }

  @Override
  public void starts(List<String> paths, String announcement) {
    // Events alone.
  }

  @Override
  public void states(List<WatchLine> states) {
    // Events alone.
  }

  @Override
  public void happens(WatchLine event) {
    worker.execute(() -> hand(event));
  }

  @Override
  public void notes(String sentence) {
    // Events alone.
  }

  private void hand(WatchLine event) {
    try {
      run.on(Json.line(event.json()) + "\n")
          .ifPresent(wrong -> say(wrong + " on the event of " + event.clock() + "."));
    } catch (InterruptedException e) {
      leftOut.incrementAndGet();
      Thread.currentThread().interrupt();
    }
    tellLeftOut();
  }

  private void tellLeftOut() {
    int events = leftOut.getAndSet(0);
    if (events > 0) {
      say("was too slow: %d event%s left out.".formatted(events, events == 1 ? "" : "s"));
    }
  }

  private void say(String what) {
    tell.accept("--on-event: " + run.words().get(0) + " " + what);
  }

  /** Lets it end what waits, as long as one run may take; what is left then is told. */
  @Override
  public void close() {
    worker.shutdown();
    try {
      if (!worker.awaitTermination(run.limit().toMillis(), TimeUnit.MILLISECONDS)) {
        leftOut.addAndGet(worker.shutdownNow().size());
        worker.awaitTermination(1, TimeUnit.SECONDS);
      }
    } catch (InterruptedException e) {
      leftOut.addAndGet(worker.shutdownNow().size());
      Thread.currentThread().interrupt();
    }
    tellLeftOut();
  }
}
