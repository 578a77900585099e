package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.signal.Latency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DeskStepTest {
  /** At 48 kHz and 20 C, a metre is 2.91375 ms or 139.860 samples (ISO 9613-1, derived). */
  @ParameterizedTest
  @CsvSource({
    "samples, 100.4, 100",
    "samples, 100.5, 101",
    "sample,  100.6, 101",
    "4samples, 101,  100",
    "0.1ms,   100.4, 100.8",
    "1ms,     71.9,  48",
    "1ms,     72,    96",
    "m,       209,   139.86014",
    "0.5m,    209,   209.79021",
    "1ft,     43,    42.62937",
    "0.01m,   0,     0"
  })
  void delaysAreSetToTheNearestStep(String step, double samples, double expected) {
    Latency delay = new Latency(samples, Harbour.chain().rate());
    assertEquals(expected, DeskStep.parse(step).nearest(delay, Harbour.chain()).samples(), 1e-5);
  }

  @Test
  void stepsAreToldAsDesksShowThem() {
    assertEquals("1 sample", DeskStep.parse("samples").label());
    assertEquals("0.1 ms", DeskStep.parse("0.10ms").label());
    assertEquals("1 ft", DeskStep.parse("ft").label());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "0ms", "-1ms", "0.1", "1 furlong", "1e-3ms", "5000ms", "0,1ms"})
  void anythingElseIsRefused(String text) {
    String message =
        assertThrows(IllegalArgumentException.class, () -> DeskStep.parse(text)).getMessage();
    assertTrue(message.startsWith("a delay step must be"), message);
  }
}
