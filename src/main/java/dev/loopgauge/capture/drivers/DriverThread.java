package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.TimedCall;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;

/**
 * The one thread that may call drivers, and the queue before it. It starts with the first piece of
 * work and lives as long as the program. A driver that doesn't answer keeps it: until that call
 * comes back everybody else is told at once that the drivers can't be used.
 */
final class DriverThread {
  private static final String HUNG = "The sound driver doesn't answer.";
  private static final String HUNG_HINT =
      "End this program, restart the driver's own program or the audio server, and start again.";

  private final Callable<Drivers> load;
  private final ExecutorService queue = Executors.newSingleThreadExecutor(DriverThread::daemon);
  private final AtomicReference<FutureTask<?>> hung = new AtomicReference<>();

  // Of the thread alone.
  private Drivers drivers;
  private CaptureException unusable;

  /** Work on the drivers. */
  interface Work<T> {
    T on(Drivers drivers) throws CaptureException;
  }

  /**
   * A thread that hasn't started.
   *
   * @param load loads the drivers, once, on the thread
   */
  DriverThread(Callable<Drivers> load) {
    this.load = load;
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "sound drivers");
    thread.setDaemon(true);
    return thread;
  }

  /**
   * Does a piece of work and waits for it.
   *
   * @param seconds how long it may take
   * @param tooLate gets a result that comes after nobody waits for it any more; on any thread
   * @throws CaptureException as the work does; with {@code BACKEND_UNUSABLE} when the drivers don't
   *     load or don't answer
   */
  <T> T call(int seconds, Work<T> work, Consumer<T> tooLate) throws CaptureException {
    if (hangs()) {
      throw new CaptureException(Kind.BACKEND_UNUSABLE, HUNG, HUNG_HINT);
    }
    FutureTask<T> task = new FutureTask<>(() -> work.on(loaded()));
    queue.execute(
        () -> {
          task.run();
          hung.compareAndSet(task, null);
        });
    try {
      return new TimedCall("The sound driver", seconds, HUNG_HINT).of(() -> result(task), tooLate);
    } catch (CaptureException e) {
      throw e.kind() == Kind.TIMED_OUT && !task.isDone() ? givenUp(task) : e;
    }
  }

  /** Whether a driver doesn't answer just now. */
  boolean hangs() {
    return hung.get() != null;
  }

  private CaptureException givenUp(FutureTask<?> task) {
    hung.set(task);
    if (task.isDone()) {
      hung.compareAndSet(task, null);
    }
    return new CaptureException(Kind.BACKEND_UNUSABLE, HUNG, HUNG_HINT);
  }

  private static <T> T result(FutureTask<T> task) throws CaptureException {
    try {
      return task.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new CaptureException(Kind.TIMED_OUT, "Waiting was interrupted.", "Run it again.");
    } catch (ExecutionException e) {
      throw failure(e.getCause());
    }
  }

  private static CaptureException failure(Throwable cause) {
    if (cause instanceof CaptureException failure) {
      return failure;
    }
    if (cause instanceof LinkageError error) {
      return MissingLibrary.failure(error);
    }
    // The library's own checks come as assertions, whether Java's are enabled or not.
    return new CaptureException(
        Kind.GONE,
        "The sound driver failed: " + cause + ".",
        "Try again, or choose another back end.");
  }

  private Drivers loaded() throws CaptureException {
    if (unusable != null) {
      throw unusable;
    }
    if (drivers == null) {
      drivers = load();
    }
    return drivers;
  }

  /** What failed once fails again, and the second time without its reason. */
  private Drivers load() throws CaptureException {
    try {
      return load.call();
    } catch (LinkageError e) {
      unusable = MissingLibrary.failure(e);
      throw unusable;
    } catch (Exception e) {
      throw failure(e);
    }
  }
}
