package dev.loopgauge.capture.jack;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.Counting;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.Take;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What happens to a take when something happens to the server or the rig. */
@NeedsAudioServer
@Timeout(30)
class JackFailureIT {
  private static final Executor SHORTLY =
      CompletableFuture.delayedExecutor(300, TimeUnit.MILLISECONDS);
  private static final Take A_MINUTE = Bench.clicks(1, 60);
  private static final DelayLine LINE = DelayLine.of(240);

  /** Something that goes wrong. */
  interface Accident {
    void happen() throws Exception;
  }

  @Test
  void saysAtOnceThatTheServerWasKilled() throws Exception {
    try (Bench bench = Bench.start(Cycles.STRETCH, 256, LINE);
        JackSession session = bench.open(1)) {
      var failure = failureWhen(session, bench.server()::kill);
      assertEquals(CaptureException.Kind.GONE, failure.kind(), failure::getMessage);
      var next = assertThrows(CaptureException.class, () -> session.capture(A_MINUTE));
      assertEquals(CaptureException.Kind.GONE, next.kind(), next::getMessage);
    }
  }

  @Test
  void givesUpOnAServerThatHasStopped() throws Exception {
    try (Bench bench = Bench.start(Cycles.STRETCH, 256, LINE);
        JackSession session = bench.open(1)) {
      var failure = failureWhen(session, bench.server()::pause);
      bench.server().resume();
      assertEquals(CaptureException.Kind.TIMED_OUT, failure.kind(), failure::getMessage);
    }
  }

  @Test
  void givesUpOnAServerThatDoesNotAnswer() throws Exception {
    try (Bench bench = Bench.start(Cycles.STRETCH, 256, LINE)) {
      bench.server().pause();
      var failure = assertThrows(CaptureException.class, () -> bench.open(1));
      bench.server().resume();
      assertEquals(CaptureException.Kind.TIMED_OUT, failure.kind(), failure::getMessage);
    }
  }

  /**
   * The server's library cancels its threads when a client closes: one that is just then telling of
   * the server's end must not be in Java, or this process ends or hangs with it. The server ends
   * well before: at the very instant the library isn't safe by itself.
   */
  @ParameterizedTest
  @ValueSource(ints = {0, 20, 40, 60})
  void leavesAServerThatEndsMeanwhile(int afterMs) throws Exception {
    try (Bench bench = Bench.start(Cycles.STRETCH, 256, LINE)) {
      JackSession session = bench.open(1);
      var left = CompletableFuture.runAsync(session::close);
      Thread.sleep(afterMs);
      bench.server().kill();
      left.get(10, TimeUnit.SECONDS);
    }
    System.gc(); // A thread that was lost in Java would never come to a safepoint.
  }

  @Test
  void neverPassesOverLostTime() throws Exception {
    try (Bench bench = Bench.start(Cycles.LOSE, 256, LINE);
        JackSession session = bench.open(1)) {
      Capture capture =
          captureWhen(
              session,
              Bench.clicks(1, 1.5),
              () -> {
                bench.rig().pause();
                Thread.sleep(200);
                bench.rig().resume();
              });
      assertEquals(Incident.Kind.DROPOUT, capture.incidents().get(0).kind());
    }
  }

  @Test
  void aStreamCountsWhatTheServerLeavesOutAndGoesOn() throws Exception {
    try (Bench bench = Bench.start(Cycles.LOSE, 256, LINE);
        JackSession session = bench.open(1)) {
      Counting counting = new Counting(3L * Bench.RATE.hertz());
      CompletableFuture<Void> streaming =
          CompletableFuture.runAsync(() -> assertDoesNotThrow(() -> session.stream(counting)));
      Thread.sleep(800);
      bench.rig().pause();
      Thread.sleep(200);
      bench.rig().resume();
      streaming.get(20, TimeUnit.SECONDS);
      assertTrue(counting.losses() > 0, "nothing was told");
    }
  }

  @Test
  void aStreamSaysWithinTwoSecondsThatTheServerWasKilled() throws Exception {
    try (Bench bench = Bench.start(Cycles.STRETCH, 256, LINE);
        JackSession session = bench.open(1)) {
      CompletableFuture<CaptureException> failure =
          CompletableFuture.supplyAsync(
              () ->
                  assertThrows(
                      CaptureException.class, () -> session.stream(new Counting(Long.MAX_VALUE))));
      Thread.sleep(500);
      bench.server().kill();
      assertEquals(CaptureException.Kind.GONE, failure.get(2, TimeUnit.SECONDS).kind());
    }
  }

  @Test
  void tellsARigThatEndedFromSilence() throws Exception {
    try (Bench bench = Bench.start(Cycles.STRETCH, 256, LINE);
        JackSession session = bench.open(1)) {
      var failure = failureWhen(session, bench.rig()::kill);
      assertEquals(CaptureException.Kind.GONE, failure.kind(), failure::getMessage);
      assertTrue(failure.hint().contains("'rig:"), failure::hint);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {128, 512})
  void neverPassesOverAnotherBlockSize(int blockSize) throws Exception {
    try (Bench bench = Bench.start(Cycles.STRETCH, 256, LINE);
        JackSession session = bench.open(1)) {
      try {
        Capture capture =
            captureWhen(session, Bench.clicks(1, 1), () -> bench.rig().changeBlockSize(blockSize));
        List<Incident> incidents = capture.incidents();
        assertEquals(
            Incident.Kind.BLOCK_SIZE_CHANGED, incidents.get(0).kind(), incidents::toString);
      } catch (CaptureException e) {
        // Once in many times jackd itself doesn't survive the change.
        assertEquals(CaptureException.Kind.TIMED_OUT, e.kind(), e::getMessage);
        return;
      }
      var next = assertThrows(CaptureException.class, () -> session.capture(A_MINUTE));
      assertTrue(next.getMessage().contains("256 to " + blockSize), next::getMessage);
      try (JackSession anew = bench.open(1)) {
        assertEquals(blockSize, anew.info().bufferSamples());
      }
    }
  }

  @Test
  void stopsPlayingWhenFeedbackGrows() throws Exception {
    // The line, patched back into itself, is a loop of gain 1.2 that the click sets off.
    DelayLine loop = DelayLine.of(500).withGain(1.2);
    try (Bench bench = Bench.start(Cycles.STRETCH, 64, loop);
        JackSession session = bench.open(1)) {
      bench.patch("rig:out_1", "rig:in_1");
      Take click = Bench.clicks(1, 10);
      var listening = List.of(new Take.Segment(2_400, click.frames()));
      Take watched = new Take(click.sends(), click.frames(), listening);
      var failure = assertThrows(CaptureException.class, () -> session.capture(watched));
      assertEquals(CaptureException.Kind.FEEDBACK, failure.kind(), failure::getMessage);
    }
  }

  private static CaptureException failureWhen(JackSession session, Accident accident) {
    return assertThrows(CaptureException.class, () -> captureWhen(session, A_MINUTE, accident));
  }

  /** Captures while, a little later, something goes wrong. */
  private static Capture captureWhen(JackSession session, Take take, Accident accident)
      throws Exception {
    CompletableFuture<Void> happened =
        CompletableFuture.runAsync(
            () -> {
              try {
                accident.happen();
              } catch (Exception e) {
                throw new IllegalStateException(e);
              }
            },
            SHORTLY);
    try {
      return session.capture(take);
    } finally {
      happened.get(10, TimeUnit.SECONDS);
    }
  }
}
