package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.CaptureException;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;

/**
 * Calls into the audio server's library that wait for the server. A server that is stuck never
 * answers, and the call can't be interrupted: it is left behind on a daemon thread of its own.
 */
final class TimedCall {
  private static final int LIMIT_SECONDS = 5;

  private TimedCall() {}

  /**
   * Makes the call and waits for its result.
   *
   * @param call throws nothing checked but {@link CaptureException}
   * @param tooLate gets a result that comes after nobody waits for it any more
   * @throws CaptureException as the call does; with {@code TIMED_OUT} after {@value #LIMIT_SECONDS}
   *     s
   */
  static <T> T of(Callable<T> call, Consumer<T> tooLate) throws CaptureException {
    CompletableFuture<T> answer = new CompletableFuture<>();
    Thread thread = new Thread(() -> answer(call, answer, tooLate), "audio server call");
    thread.setDaemon(true);
    thread.start();
    try {
      return answer.get(LIMIT_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      return given(
          answer,
          timedOut(
              "The audio server did not answer within " + LIMIT_SECONDS + " s.",
              "Restart the audio server; it runs, but it is stuck."));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return given(
          answer,
          timedOut("Waiting for the audio server was interrupted.", "Run the command again."));
    } catch (ExecutionException e) {
      throw failure(e.getCause());
    }
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
