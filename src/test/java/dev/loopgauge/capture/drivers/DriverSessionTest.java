package dev.loopgauge.capture.drivers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.Counting;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.LostFrames;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What a session makes of what a driver does, on a driver in numbers. */
@Timeout(60)
class DriverSessionTest {
  private static final int DELAY = 100;
  private static final int ENOUGH = 1 << 20;

  private final FakeDrivers drivers =
      new FakeDrivers(DELAY)
          .with("ASIO", FakeDrivers.device("ASIO", "Stage card", 2, 2, true))
          .with("ALSA", FakeDrivers.device("ALSA", "Laptop", 2, 2, false));
  private final DriversBackend backend = new DriversBackend(new DriverThread(() -> drivers));

  @Test
  void framesThatTheDriverLeavesOutAreToldWithTheirPlace() throws Exception {
    try (AudioSession session = open("ASIO: Stage card")) {
      Capture capture = session.capture(when(20_000, () -> stream().miss(300)));
      Incident incident = capture.incidents().get(0);
      assertEquals(Incident.Kind.DROPOUT, incident.kind());
      assertEquals(300, incident.frames());
      assertEquals("300 frames were left out.", incident.text());
      assertTrue(incident.frame() >= 20_000, "at " + incident.frame());
    }
  }

  @Test
  void framesThatComeTwiceAreTold() throws Exception {
    try (AudioSession session = open("ASIO: Stage card")) {
      Capture capture = session.capture(when(20_000, () -> stream().miss(-64)));
      assertEquals("64 frames came twice.", capture.incidents().get(0).text());
    }
  }

  @Test
  void aLossThatNobodyCanCountIsTold() throws Exception {
    try (AudioSession session = open("ASIO: Stage card")) {
      Capture capture = session.capture(when(20_000, () -> stream().loseSound()));
      assertEquals("The driver lost sound (xrun).", capture.incidents().get(0).text());
    }
  }

  @Test
  void whatWasLostBetweenTakesIsNoBusinessOfTheNext() throws Exception {
    try (AudioSession session = open("ASIO: Stage card")) {
      session.capture(when(ENOUGH, () -> {}));
      stream().loseSound();
      assertEquals(List.of(), session.capture(when(ENOUGH, () -> {})).incidents());
    }
  }

  @Test
  void joinedDevicesThatLoseSoundMustBeOpenedAnew() throws Exception {
    try (AudioSession session = open("ALSA: Laptop")) {
      var lost =
          assertThrows(
              CaptureException.class,
              () -> session.capture(when(20_000, () -> stream().loseSound())));
      assertEquals(Kind.SHORT, lost.kind());
      assertTrue(lost.before().orElseThrow().incidents().get(0).frame() >= 20_000);
      var still =
          assertThrows(CaptureException.class, () -> session.capture(when(ENOUGH, () -> {})));
      assertEquals(Kind.SHORT, still.kind());
      session.renew();
      assertEquals(2, drivers.streams().size());
      assertTrue(drivers.streams().get(0).isClosed());
      assertEquals(List.of(), session.capture(when(ENOUGH, () -> {})).incidents());
    }
  }

  @Test
  void aCardThatGoesAwayIsSaid() throws Exception {
    try (AudioSession session = open("ASIO: Stage card")) {
      var gone =
          assertThrows(
              CaptureException.class, () -> session.capture(when(20_000, () -> stream().goAway())));
      assertEquals("The card went away.", gone.getMessage());
    }
  }

  @Test
  void aCardThatStallsIsGivenUp() throws Exception {
    try (AudioSession session = open("ASIO: Stage card")) {
      var stalled =
          assertThrows(
              CaptureException.class, () -> session.capture(when(20_000, () -> stream().stall())));
      assertEquals(Kind.TIMED_OUT, stalled.kind(), stalled::getMessage);
    }
    assertTrue(stream().isClosed());
  }

  @Test
  void anotherBlockSizeSpoilsTheTakeAndEndsTheSession() throws Exception {
    try (AudioSession session = open("ASIO: Stage card")) {
      Capture capture = session.capture(when(20_000, () -> stream().changeBlockSize(128)));
      assertEquals(Incident.Kind.BLOCK_SIZE_CHANGED, capture.incidents().get(0).kind());
      var next =
          assertThrows(CaptureException.class, () -> session.capture(when(ENOUGH, () -> {})));
      assertTrue(next.getMessage().contains("64 to 128"), next::getMessage);
    }
  }

  @Test
  void aStreamCountsWhatIsLeftOutAndTellsWhatNobodyCanCount() throws Exception {
    try (AudioSession session = open("ASIO: Stage card")) {
      Counting counting = new Counting(400_000);
      stream().loseSound();
      session.stream(
          new BlockListener() {
            @Override
            public boolean block(long frame, float[][] returns, int length) {
              if (frame == 64 * 100) {
                stream().miss(640);
                stream().loseSound();
              }
              return counting.block(frame, returns, length);
            }

            @Override
            public void lost(LostFrames lost) {
              counting.lost(lost);
            }
          });
      assertTrue(counting.losses() >= 2, counting.losses() + " losses");
    }
  }

  /** The stream that was opened last. */
  private FakeStream stream() {
    return drivers.streams().get(drivers.streams().size() - 1);
  }

  private AudioSession open(String device) throws CaptureException {
    return backend.open(
        new SessionRequest(
            Optional.of(device), Optional.of(device), List.of(1), List.of(1), Optional.empty(), 0));
  }

  /** A long take; once that many frames are recorded, something happens. */
  private static Take when(int frames, Runnable accident) {
    Signal silence = Signal.silence(FakeDrivers.RATE, 10);
    boolean[] happened = {false};
    return new Take(List.of(silence), 500_000, List.of())
        .watchedBy(
            (returns, recorded) -> {
              if (recorded >= frames && !happened[0]) {
                happened[0] = true;
                accident.run();
              }
            });
  }
}
