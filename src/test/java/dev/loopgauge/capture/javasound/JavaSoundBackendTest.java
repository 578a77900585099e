package dev.loopgauge.capture.javasound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.SessionRequest;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class JavaSoundBackendTest {
  private static final SessionRequest REQUEST =
      new SessionRequest(
          Optional.empty(), Optional.empty(), List.of(1), List.of(1), Optional.empty(), 0);

  @Test
  void listsWhatThePlatformHas() {
    FakeDevice card = new FakeDevice("Stage card", 2, 4, format -> true);
    Availability found = new JavaSoundBackend(() -> List.of(card)).look();
    var usable = assertInstanceOf(Availability.Usable.class, found);
    assertEquals("Stage card", usable.devices().get(0).name());
  }

  @Test
  void saysWhyItCannotBeUsed() {
    Availability found = new JavaSoundBackend(List::of).look();
    var unusable = assertInstanceOf(Availability.Unusable.class, found);
    assertTrue(unusable.hint().contains("libasound2-plugins"), unusable.hint());
  }

  @Test
  void neverThrowsFromLook() {
    Availability found =
        new JavaSoundBackend(
                () -> {
                  throw new IllegalStateException("no sound here");
                })
            .look();
    var unusable = assertInstanceOf(Availability.Unusable.class, found);
    assertTrue(unusable.reason().contains("no sound here"), unusable.reason());
  }

  @Test
  void opensAndLetsGo() throws Exception {
    FakeDevice card = new FakeDevice("Stage card", 2, 2, format -> true);
    try (AudioSession session = new JavaSoundBackend(() -> List.of(card)).open(REQUEST)) {
      assertEquals("java-sound", session.info().backend());
    }
  }

  @Test
  void passesOnWhyNothingOpens() {
    FakeDevice card = new FakeDevice("Stage card", 2, 2, format -> false);
    JavaSoundBackend backend = new JavaSoundBackend(() -> List.of(card));
    assertEquals(
        Kind.BUSY, assertThrows(CaptureException.class, () -> backend.open(REQUEST)).kind());
  }
}
