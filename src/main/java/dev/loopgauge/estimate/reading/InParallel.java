package dev.loopgauge.estimate.reading;

import java.util.List;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * Work on each of several pieces, on as many cores as are free. Results come in the order of the
 * pieces, whichever was ready first, so they are the same each time if the work on a piece depends
 * on that piece alone. Elsewhere the core starts nothing in parallel.
 */
public final class InParallel {
  private InParallel() {}

  /** What the work gives for each piece, in their order. */
  public static <T, R> List<R> map(List<T> pieces, Function<T, R> work) {
    return pieces.parallelStream().map(work).toList();
  }

  /**
   * What the work gives for each index, in their order.
   *
   * @param from the first index
   * @param to the index after the last
   */
  public static <T> List<T> map(int from, int to, IntFunction<T> work) {
    return IntStream.range(from, to).parallel().mapToObj(work).toList();
  }

  /** Whether no index from 0 to before {@code count} passes a test. */
  public static boolean none(int count, IntPredicate test) {
    return IntStream.range(0, count).parallel().noneMatch(test);
  }
}
