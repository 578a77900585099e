package dev.loopgauge.capture.jack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.signal.SampleRate;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What is there, and what is refused before any sound flows. */
@NeedsAudioServer
@Timeout(30)
class JackRefusalIT {
  private static Bench bench;

  @BeforeAll
  static void start() throws IOException {
    bench = Bench.start(Cycles.STRETCH, 1024, DelayLine.of(0), DelayLine.of(100));
  }

  @AfterAll
  static void stop() {
    bench.close();
  }

  @Test
  void listsTheSoundCardAndTheClients() {
    var expected = new Availability.Usable(List.of(card("system"), card("rig")));
    assertEquals(expected, new JackBackend().look());
  }

  private static AudioDevice card(String name) {
    return new AudioDevice(name, 2, 2, List.of(Bench.RATE), RateSource.SERVER, true);
  }

  @Test
  void takesTheSoundCardWhenNothingIsNamed() throws CaptureException {
    try (JackSession session =
        new JackBackend()
            .open(
                new SessionRequest(
                    Optional.empty(),
                    Optional.empty(),
                    List.of(2),
                    List.of(1),
                    Optional.empty(),
                    0))) {
      assertEquals("system", session.info().output());
      assertEquals(4_800, session.capture(Bench.clicks(1, 0.1)).returns().get(0).length());
    }
  }

  @Test
  void namesTheClientsThatAreThere() {
    refuses(
        Bench.request("rug", 1),
        Kind.NO_SUCH_DEVICE,
        "The audio server has no client 'rug' with audio ports; it has system, rig.");
  }

  @Test
  void saysHowManyChannelsThereAre() {
    refuses(
        Bench.request("rig", 3),
        Kind.TOO_FEW_CHANNELS,
        "There is no send 3: 'rig' has 2 input ports.");
  }

  @Test
  void refusesAnotherRateThanTheServers() {
    SessionRequest any = Bench.request("rig", 1);
    refuses(
        new SessionRequest(
            any.output(),
            any.input(),
            any.sends(),
            any.returns(),
            Optional.of(new SampleRate(44_100)),
            0),
        Kind.UNSUPPORTED_FORMAT,
        "The audio server runs at 48000 Hz, not at 44100 Hz.");
  }

  @Test
  void refusesAnotherBlockSizeThanTheServers() {
    SessionRequest any = Bench.request("rig", 1);
    refuses(
        new SessionRequest(
            any.output(), any.input(), any.sends(), any.returns(), Optional.empty(), 64),
        Kind.UNSUPPORTED_FORMAT,
        "The audio server's block size is 1024 samples, not 64.");
  }

  private static void refuses(SessionRequest request, Kind kind, String text) {
    var refused = assertThrows(CaptureException.class, () -> new JackBackend().open(request));
    assertEquals(text, refused.getMessage());
    assertEquals(kind, refused.kind());
  }
}
