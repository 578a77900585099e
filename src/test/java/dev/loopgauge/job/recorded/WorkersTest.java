package dev.loopgauge.job.recorded;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class WorkersTest {
  private static final List<Integer> PIECES = IntStream.range(0, 100).boxed().toList();

  @Test
  void keepsTheOrder() {
    assertEquals(
        PIECES.stream().map(i -> i * i).toList(), Workers.map(PIECES, piece -> piece * piece));
  }

  @Test
  void worksOnNoMorePiecesThanThereAreCores() {
    AtomicInteger running = new AtomicInteger();
    List<Integer> seen =
        Workers.map(
            PIECES,
            piece -> {
              int now = running.incrementAndGet();
              int sum = IntStream.range(0, 1000).parallel().sum();
              running.decrementAndGet();
              return sum == 499_500 ? now : Integer.MAX_VALUE;
            });
    int most = seen.stream().mapToInt(Integer::intValue).max().orElseThrow();
    assertTrue(most <= Runtime.getRuntime().availableProcessors(), most + " at once");
  }

  @Test
  void throwsWhatAPieceThrew() {
    IllegalStateException failure = new IllegalStateException("the third");
    assertSame(
        failure,
        assertThrows(
            IllegalStateException.class,
            () ->
                Workers.map(
                    PIECES,
                    piece -> {
                      if (piece == 2) {
                        throw failure;
                      }
                      return piece;
                    })));
  }

  @Test
  void throwsErrorsAsErrors() {
    assertThrows(
        OutOfMemoryError.class,
        () ->
            Workers.map(
                PIECES,
                piece -> {
                  throw new OutOfMemoryError("pretended");
                }));
  }
}
