package dev.loopgauge.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
class TimedCallTest {
  private final CountDownLatch answer = new CountDownLatch(1);

  private String answerOnceTold() throws InterruptedException {
    answer.await();
    return "answer";
  }

  private TimedCall call(LongSupplier loaded) {
    return new TimedCall("The server", 0, "Restart it.", loaded);
  }

  @Test
  void givesTheAnswer() throws CaptureException {
    assertEquals("yes", new TimedCall("The server", 5, "Restart it.").of(() -> "yes", late -> {}));
  }

  @Test
  void givesUpOnASystemThatDoesNotAnswerAndTakesWhatComesTooLate() throws Exception {
    CompletableFuture<String> late = new CompletableFuture<>();
    CaptureException e =
        assertThrows(
            CaptureException.class, () -> call(() -> 7).of(this::answerOnceTold, late::complete));
    assertEquals("The server did not answer within 0 s.", e.getMessage());
    assertEquals(CaptureException.Kind.TIMED_OUT, e.kind());
    answer.countDown();
    assertEquals("answer", late.get(5, TimeUnit.SECONDS));
  }

  /** The first call loads hundreds of classes: a busy computer is not a server that is stuck. */
  @Test
  void waitsOnWhileClassesAreBeingLoaded() throws CaptureException {
    AtomicLong loaded = new AtomicLong();
    TimedCall call =
        call(
            () -> {
              if (loaded.incrementAndGet() == 4) {
                answer.countDown();
              }
              return loaded.get();
            });
    assertEquals("answer", call.of(this::answerOnceTold, late -> {}));
  }

  @Test
  void passesOnWhatTheCallThrows() {
    CaptureException gone =
        new CaptureException(CaptureException.Kind.GONE, "It went.", "Look for it.");
    CaptureException e =
        assertThrows(
            CaptureException.class,
            () ->
                call(() -> 0)
                    .of(
                        () -> {
                          throw gone;
                        },
                        late -> {}));
    assertEquals(gone, e);
  }
}
