package dev.loopgauge.capture.drivers;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.Counting;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.Take;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What happens to a take on the drivers' JACK when something happens to the server or the rig. */
@NeedsAudioServer
@Timeout(60)
class DriversFailureIT {
  private static final Executor SHORTLY =
      CompletableFuture.delayedExecutor(300, TimeUnit.MILLISECONDS);
  private static final Take A_MINUTE = DriversRig.clicks(1, 60);
  private static final DelayLine LINE = DelayLine.of(240);

  /** Something that goes wrong. */
  interface Accident {
    void happen() throws Exception;
  }

  @Test
  void saysThatTheServerWasKilledAndServesTheNextOne() throws Exception {
    try (DriversRig rig = DriversRig.start(Cycles.STRETCH, 256, LINE);
        AudioSession session = rig.open(1)) {
      var failure = failureWhen(session, rig.server()::kill);
      assertEquals(Kind.GONE, failure.kind(), failure::getMessage);
      var next = assertThrows(CaptureException.class, () -> session.capture(A_MINUTE));
      assertEquals(Kind.GONE, next.kind(), next::getMessage);
    }
    try (DriversRig rig = DriversRig.start(Cycles.STRETCH, 256, LINE);
        AudioSession session = rig.open(1)) {
      DriversRig.cleanCapture(session, DriversRig.clicks(1, 0.1));
    }
  }

  @Test
  void saysThatTheServerWasKilledBetweenTakes() throws Exception {
    try (DriversRig rig = DriversRig.start(Cycles.STRETCH, 256, LINE);
        AudioSession session = rig.open(1)) {
      DriversRig.cleanCapture(session, DriversRig.clicks(1, 0.1));
      rig.server().kill();
      var failure = assertThrows(CaptureException.class, () -> session.capture(A_MINUTE));
      assertEquals(Kind.GONE, failure.kind(), failure::getMessage);
    }
  }

  @Test
  void aStreamSaysThatTheServerWasKilled() throws Exception {
    try (DriversRig rig = DriversRig.start(Cycles.STRETCH, 256, LINE);
        AudioSession session = rig.open(1)) {
      CompletableFuture<Void> killed =
          CompletableFuture.runAsync(() -> rig.server().kill(), SHORTLY);
      var failure =
          assertThrows(CaptureException.class, () -> session.stream(new Counting(Long.MAX_VALUE)));
      assertEquals(Kind.GONE, failure.kind(), failure::getMessage);
      killed.get(10, TimeUnit.SECONDS);
    }
  }

  /** What the library tells then must not end this process, see the package's comment. */
  @Test
  void leavesAServerThatEndsMeanwhile() throws Exception {
    for (int afterMs : new int[] {0, 60}) {
      try (DriversRig rig = DriversRig.start(Cycles.STRETCH, 256, LINE)) {
        AudioSession session = rig.open(1);
        var left = CompletableFuture.runAsync(session::close);
        Thread.sleep(afterMs);
        rig.server().kill();
        left.get(10, TimeUnit.SECONDS);
      }
    }
    System.gc(); // A thread that was lost in Java would never come to a safepoint.
  }

  @Test
  void givesUpOnAServerThatHasStopped() throws Exception {
    try (DriversRig rig = DriversRig.start(Cycles.STRETCH, 256, LINE);
        AudioSession session = rig.open(1)) {
      var failure = failureWhen(session, rig.server()::pause);
      rig.server().resume();
      assertTrue(
          failure.kind() == Kind.TIMED_OUT || failure.kind() == Kind.BACKEND_UNUSABLE,
          failure::getMessage);
    }
  }

  @Test
  void neverPassesOverLostTime() throws Exception {
    try (DriversRig rig = DriversRig.start(Cycles.LOSE, 256, LINE);
        AudioSession session = rig.open(1)) {
      Capture capture = captureWhen(session, DriversRig.clicks(1, 1.5), () -> stumble(rig));
      assertEquals(Incident.Kind.DROPOUT, capture.incidents().get(0).kind());
    }
  }

  @Test
  void aStreamTellsWhatTheServerLosesAndGoesOn() throws Exception {
    try (DriversRig rig = DriversRig.start(Cycles.LOSE, 256, LINE);
        AudioSession session = rig.open(1)) {
      Counting counting = new Counting(2L * DriversRig.RATE.hertz());
      CompletableFuture<Void> stumbled =
          CompletableFuture.runAsync(() -> assertDoesNotThrow(() -> stumble(rig)), SHORTLY);
      session.stream(counting);
      stumbled.get(10, TimeUnit.SECONDS);
      assertTrue(counting.losses() > 0, "nothing was told");
    }
  }

  private static void stumble(DriversRig rig) throws InterruptedException {
    rig.rig().pause();
    Thread.sleep(200);
    rig.rig().resume();
  }

  @Test
  void tellsARigThatEndedFromSilence() throws Exception {
    try (DriversRig rig = DriversRig.start(Cycles.STRETCH, 256, LINE);
        AudioSession session = rig.open(1)) {
      var failure =
          assertThrows(
              CaptureException.class,
              () -> captureWhen(session, DriversRig.clicks(1, 1), rig.rig()::kill));
      assertEquals(Kind.GONE, failure.kind(), failure::getMessage);
      assertTrue(failure.getMessage().contains("\"JACK: rig\""), failure::getMessage);
    }
  }

  @Test
  void neverPassesOverAnotherBlockSize() throws Exception {
    try (DriversRig rig = DriversRig.start(Cycles.STRETCH, 256, LINE);
        AudioSession session = rig.open(1)) {
      Capture capture =
          captureWhen(session, DriversRig.clicks(1, 1), () -> rig.rig().changeBlockSize(512));
      assertEquals(
          Incident.Kind.BLOCK_SIZE_CHANGED,
          capture.incidents().get(0).kind(),
          capture.incidents()::toString);
      var next = assertThrows(CaptureException.class, () -> session.capture(A_MINUTE));
      assertTrue(next.getMessage().contains("256 to 512"), next::getMessage);
      try (AudioSession anew = rig.open(1)) {
        assertEquals(512, anew.info().bufferSamples());
      }
    }
  }

  @Test
  void stopsPlayingWhenFeedbackGrows() throws Exception {
    // The line, patched back into itself, is a loop of gain 1.2 that the click sets off.
    DelayLine loop = DelayLine.of(500).withGain(1.2);
    try (DriversRig rig = DriversRig.start(Cycles.STRETCH, 64, loop);
        AudioSession session = rig.open(1)) {
      rig.server().patch("rig:out_1", "rig:in_1");
      Take click = DriversRig.clicks(1, 10);
      var listening = List.of(new Take.Segment(2_400, click.frames()));
      Take watched = new Take(click.sends(), click.frames(), listening);
      var failure = assertThrows(CaptureException.class, () -> session.capture(watched));
      assertEquals(Kind.FEEDBACK, failure.kind(), failure::getMessage);
    }
  }

  @Test
  void saysThatNoServerRuns() throws Exception {
    DriversRig.start(Cycles.STRETCH, 256, LINE).close();
    var failure =
        assertThrows(
            CaptureException.class,
            () -> new DriversBackend().open(DriversRig.request(DriversRig.NAME, List.of(1))));
    assertEquals(Kind.BACKEND_UNUSABLE, failure.kind(), failure::getMessage);
    assertEquals("JACK: its audio server doesn't run.", failure.getMessage());
    assertInstanceOf(Availability.class, new DriversBackend().look());
  }

  private static CaptureException failureWhen(AudioSession session, Accident accident) {
    return assertThrows(CaptureException.class, () -> captureWhen(session, A_MINUTE, accident));
  }

  /** Captures while, a little later, something goes wrong. */
  private static Capture captureWhen(AudioSession session, Take take, Accident accident)
      throws Exception {
    CompletableFuture<Void> happened =
        CompletableFuture.runAsync(() -> assertDoesNotThrow(accident::happen), SHORTLY);
    try {
      return session.capture(take);
    } finally {
      happened.get(10, TimeUnit.SECONDS);
    }
  }
}
