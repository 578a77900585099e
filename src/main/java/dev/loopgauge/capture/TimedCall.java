package dev.loopgauge.capture;

import java.lang.management.ManagementFactory;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * Calls into a system that may never answer, and can't be interrupted: a call that takes too long
 * is left behind on a daemon thread of its own.
 *
 * <p>The limit is on the system, not on this program: while classes are still being loaded the call
 * gets another second, up to {@value #MOST_MORE}, for a busy computer may take many seconds to load
 * what the first call needs.
 */
public final class TimedCall {
  private static final int MOST_MORE = 30;

  private final String who;
  private final int seconds;
  private final String hint;
  private final LongSupplier loadedClasses;

  /**
   * A kind of call.
   *
   * @param who what is called, the subject of a sentence: "The audio server"
   * @param seconds how long it may take
   * @param hint what to try when it takes longer, one sentence
   */
  public TimedCall(String who, int seconds, String hint) {
    this(
        who,
        seconds,
        hint,
        () -> ManagementFactory.getClassLoadingMXBean().getTotalLoadedClassCount());
  }

  TimedCall(String who, int seconds, String hint, LongSupplier loadedClasses) {
    this.who = who;
    this.seconds = seconds;
    this.hint = hint;
    this.loadedClasses = loadedClasses;
  }

  /**
   * Makes the call and waits for its result.
   *
   * @param call throws nothing checked but {@link CaptureException}
   * @param tooLate gets a result that comes after nobody waits for it any more
   * @throws CaptureException as the call does; with {@code TIMED_OUT} when it takes too long
   */
  public <T> T of(Callable<T> call, Consumer<T> tooLate) throws CaptureException {
    CompletableFuture<T> answer = new CompletableFuture<>();
    Thread thread = new Thread(() -> answer(call, answer, tooLate), "timed call");
    thread.setDaemon(true);
    thread.start();
    try {
      return awaited(answer);
    } catch (TimeoutException e) {
      return given(answer, timedOut(who + " did not answer within " + seconds + " s.", hint));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return given(answer, timedOut("Waiting was interrupted.", "Run the command again."));
    } catch (ExecutionException e) {
      throw failure(e.getCause());
    }
  }

  private <T> T awaited(CompletableFuture<T> answer)
      throws TimeoutException, InterruptedException, ExecutionException {
    try {
      return answer.get(seconds, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      return awaitedWhileLoading(answer);
    }
  }

  private <T> T awaitedWhileLoading(CompletableFuture<T> answer)
      throws TimeoutException, InterruptedException, ExecutionException {
    for (int more = 0; more < MOST_MORE; more++) {
      long before = loadedClasses.getAsLong();
      try {
        return answer.get(1, TimeUnit.SECONDS);
      } catch (TimeoutException e) {
        if (loadedClasses.getAsLong() == before) {
          throw e;
        }
      }
    }
    throw new TimeoutException();
  }

  private static <T> void answer(
      Callable<T> call, CompletableFuture<T> answer, Consumer<T> tooLate) {
    T result;
    try {
      result = call.call();
    } catch (Throwable e) {
      answer.completeExceptionally(e);
      return;
    }
    if (!answer.complete(result)) {
      tooLate.accept(result);
    }
  }

  /** Gives up waiting, unless the answer came at the last moment. */
  private static <T> T given(CompletableFuture<T> answer, CaptureException otherwise)
      throws CaptureException {
    if (answer.completeExceptionally(otherwise) || answer.isCompletedExceptionally()) {
      throw otherwise;
    }
    return answer.join();
  }

  private static CaptureException timedOut(String text, String hint) {
    return new CaptureException(CaptureException.Kind.TIMED_OUT, text, hint);
  }

  private static CaptureException failure(Throwable cause) {
    if (cause instanceof CaptureException failure) {
      return failure;
    }
    if (cause instanceof Error error) {
      throw error;
    }
    throw cause instanceof RuntimeException e ? e : new IllegalStateException(cause);
  }
}
