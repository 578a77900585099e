package dev.loopgauge.estimate.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.RecursiveAction;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;

/**
 * Work on each of several pieces, on as many cores as are free. Results come in the order of the
 * pieces, whichever was ready first, so they are the same each time if the work on a piece depends
 * on that piece alone. Elsewhere the core starts nothing in parallel. By tasks rather than streams,
 * whose classes a short command would load for this alone.
 */
public final class InParallel {
  private InParallel() {}

  /** What the work gives for each piece, in their order. */
  public static <T, R> List<R> map(List<T> pieces, Function<T, R> work) {
    return pieces.size() == 1
        ? List.of(work.apply(pieces.get(0)))
        : Pieces.of(0, pieces.size(), new OfPieces<>(pieces, work));
  }

  /**
   * What the work gives for each index, in their order.
   *
   * @param from the first index
   * @param to the index after the last
   */
  public static <T> List<T> map(int from, int to, IntFunction<T> work) {
    return Pieces.of(from, to, work);
  }

  /** Whether no index from 0 to before {@code count} passes a test. */
  public static boolean none(int count, IntPredicate test) {
    return count == 1 ? !test.test(0) : !Pieces.of(0, count, new OfTest(test)).contains(true);
  }

  private record OfPieces<T, R>(List<T> pieces, Function<T, R> work) implements IntFunction<R> {
    @Override
    public R apply(int index) {
      return work.apply(pieces.get(index));
    }
  }

  private record OfTest(IntPredicate test) implements IntFunction<Boolean> {
    @Override
    public Boolean apply(int index) {
      return test.test(index);
    }
  }

  /** The pieces from one to before another: halved until each is by itself. */
  private static final class Pieces<R> extends RecursiveAction {
    private static final long serialVersionUID = 1L;

    private final transient IntFunction<R> work;
    private final transient List<R> results;
    private final int from;
    private final int to;

    private Pieces(int from, int to, IntFunction<R> work) {
      this.from = from;
      this.to = to;
      this.work = work;
      this.results = new ArrayList<>();
    }

    static <R> List<R> of(int from, int to, IntFunction<R> work) {
      if (to <= from) {
        return List.of();
      }
      Pieces<R> all = new Pieces<>(from, to, work);
      all.invoke();
      return List.copyOf(all.results);
    }

    @Override
    protected void compute() {
      if (to - from == 1) {
        results.add(work.apply(from));
        return;
      }
      int middle = (from + to) >>> 1;
      Pieces<R> left = new Pieces<>(from, middle, work);
      Pieces<R> right = new Pieces<>(middle, to, work);
      ForkJoinTask.invokeAll(left, right);
      results.addAll(left.results);
      results.addAll(right.results);
    }
  }
}
