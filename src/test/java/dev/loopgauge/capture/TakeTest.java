package dev.loopgauge.capture;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.List;
import org.junit.jupiter.api.Test;

class TakeTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final Signal SEND = Signal.of(RATE, new double[8]);
  private static final Take TAKE = new Take(List.of(SEND, SEND), 8, List.of());

  @Test
  void fitsSessionOfAsManySendsAtItsRate() {
    assertDoesNotThrow(() -> TAKE.checkFits(2, RATE));
  }

  @Test
  void doesNotFitOtherNumberOfSends() {
    for (int sends : new int[] {1, 3}) {
      IllegalArgumentException refused =
          assertThrows(IllegalArgumentException.class, () -> TAKE.checkFits(sends, RATE));
      assertEquals("the session has " + sends + " sends, the take 2", refused.getMessage());
    }
  }

  @Test
  void doesNotFitOtherRate() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class, () -> TAKE.checkFits(2, new SampleRate(44_100)));
    assertEquals(
        "the session runs at 44100 Hz, a send of the take at 48000 Hz", refused.getMessage());
  }
}
