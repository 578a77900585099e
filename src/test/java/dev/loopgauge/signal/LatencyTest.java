package dev.loopgauge.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LatencyTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  /** 12 + 11 samples of converter filters at 48 kHz are 0.4792 ms (data sheets, issuer). */
  @Test
  void tellsSamplesAsTime() {
    Latency converters = new Latency(12, RATE).plus(new Latency(11, RATE));

    assertEquals(0.4792, converters.ms(), 5e-5);
    assertEquals(0.0004792, converters.seconds(), 5e-8);
  }

  @Test
  void comesBackFromTime() {
    assertEquals(new Latency(48, RATE), Latency.ofMs(1, RATE));
    assertEquals(new Latency(-24_000, RATE), Latency.ofSeconds(-0.5, RATE));
    assertEquals(12.25, Latency.ofMs(new Latency(12.25, RATE).ms(), RATE).samples(), 1e-12);
  }

  @Test
  void isNegativeWhereOneLeads() {
    assertEquals(-2.5, new Latency(1, RATE).minus(new Latency(3.5, RATE)).samples());
  }

  @Test
  void refusesToMixRates() {
    Latency other = new Latency(1, new SampleRate(44_100));

    var refused =
        assertThrows(IllegalArgumentException.class, () -> new Latency(1, RATE).plus(other));
    assertTrue(refused.getMessage().contains("48000 and 44100 Hz"), refused.getMessage());
    assertThrows(IllegalArgumentException.class, () -> new Latency(1, RATE).minus(other));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesWhatIsNoNumber(double samples) {
    assertThrows(IllegalArgumentException.class, () -> new Latency(samples, RATE));
  }
}
