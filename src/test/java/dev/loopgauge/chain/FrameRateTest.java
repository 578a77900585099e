package dev.loopgauge.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FrameRateTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  /** Lengths of one frame, exact rationals (derived). */
  @ParameterizedTest
  @CsvSource({
    "24000, 1001, 41.708333, 2002,   4004,   1839.3375",
    "24,    1,    41.666667, 2000,   4000,   1837.5",
    "25,    1,    40,        1920,   3840,   1764",
    "30000, 1001, 33.366667, 1601.6, 3203.2, 1471.47",
    "30,    1,    33.333333, 1600,   3200,   1470",
    "50,    1,    20,        960,    1920,   882",
    "60000, 1001, 16.683333, 800.8,  1601.6, 735.735",
    "60,    1,    16.666667, 800,    1600,   735"
  })
  void oneFrameHasItsPublishedLength(
      int numerator, int denominator, double ms, double at48, double at96, double at44) {
    FrameRate rate = new FrameRate(numerator, denominator);
    assertEquals(at48, rate.samples(1, RATE));
    assertEquals(at96, rate.samples(1, new SampleRate(96_000)));
    assertEquals(at44, rate.samples(1, new SampleRate(44_100)));
    assertEquals(ms, new Latency(rate.samples(1, RATE), RATE).ms(), 0.0000005);
  }

  /** The audio frame sequence 1602, 1601, 1602, 1601, 1602 sums to 8008 (SMPTE ST 272, memory). */
  @Test
  void fiveFramesOfThirtyOverOneOhOhOneAreWholeSamples() {
    assertEquals(8008, new FrameRate(30_000, 1001).samples(5, RATE));
    assertEquals(4004, new FrameRate(60_000, 1001).samples(5, RATE));
  }

  @Test
  void equalRatesAreEqualHoweverWritten() {
    assertEquals(new FrameRate(25, 1), new FrameRate(50, 2));
    assertEquals("60000/1001", new FrameRate(120_000, 2002).toString());
    assertEquals("25", new FrameRate(25, 1).toString());
  }

  @ParameterizedTest
  @CsvSource({"0, 1", "25, 0", "-25, -1", "1001, 1", "1, 2", "2147483647, 1"})
  void impossibleRatesAreRefused(int numerator, int denominator) {
    IllegalArgumentException e =
        assertThrows(IllegalArgumentException.class, () -> new FrameRate(numerator, denominator));
    assertTrue(e.getMessage().contains(numerator + "/" + denominator), e.getMessage());
  }

  @Test
  void pictureIsLateByItsFramesAndWhateverElseItHas() {
    Chain chain = ChainFiles.theatre();
    assertEquals(1601.6, chain.delay(chain.pictures().get("cameras")).samples());
  }

  @Test
  void framesWithoutARateHaveNoLength() {
    Conditions sound = new Conditions(RATE, 64, 20, Optional.empty());
    assertThrows(IllegalStateException.class, () -> new Delay.Frames(1).samples(sound));
  }
}
