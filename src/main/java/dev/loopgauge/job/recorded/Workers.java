package dev.loopgauge.job.recorded;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Function;

/**
 * Large pieces of work side by side, as many at a time as there are cores. A parallel stream would
 * do, but while it waits for a stream within one piece it begins the next, and memory then holds
 * many pieces at once.
 */
final class Workers {
  private Workers() {}

  /** The result of each piece, in their order; throws what the first that failed threw. */
  static <T, R> List<R> map(List<T> pieces, Function<T, R> work) {
    ExecutorService threads =
        Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    try {
      List<CompletableFuture<R>> running = new ArrayList<>();
      for (T piece : pieces) {
        running.add(CompletableFuture.supplyAsync(() -> work.apply(piece), threads));
      }
      return running.stream().map(CompletableFuture::join).toList();
    } catch (CompletionException failed) {
      if (failed.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      if (failed.getCause() instanceof Error cause) {
        throw cause;
      }
      throw failed;
    } finally {
      threads.shutdownNow();
    }
  }
}
