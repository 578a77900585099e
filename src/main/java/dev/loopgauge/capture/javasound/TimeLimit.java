package dev.loopgauge.capture.javasound;

import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;

/** Runs what may hang inside the operating system on a thread of its own. */
final class TimeLimit {
  private TimeLimit() {}

  /**
   * Runs work.
   *
   * @param seconds after how many seconds to give up on it
   * @param discard what to do with a result that comes too late
   * @throws TimeoutException when it takes too long
   * @throws ExecutionException with the exception that the work threw as its cause
   * @throws InterruptedException when this thread is interrupted meanwhile
   */
  static <T> T run(Callable<T> work, int seconds, Consumer<T> discard)
      throws TimeoutException, ExecutionException, InterruptedException {
    CompletableFuture<T> result = new CompletableFuture<>();
    Thread thread = new Thread(() -> complete(result, work, discard), "java-sound open");
    thread.setDaemon(true);
    thread.start();
    try {
      return result.get(seconds, TimeUnit.SECONDS);
    } finally {
      result.cancel(false);
    }
  }

  private static <T> void complete(
      CompletableFuture<T> result, Callable<T> work, Consumer<T> discard) {
    try {
      T value = work.call();
      if (!result.complete(value)) {
        discard.accept(value);
      }
    } catch (Exception | LinkageError e) {
      result.completeExceptionally(e);
    }
  }
}
