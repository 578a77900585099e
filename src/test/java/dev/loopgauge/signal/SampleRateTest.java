package dev.loopgauge.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SampleRateTest {
  @ParameterizedTest
  @CsvSource({"1, 44100", "0.5, 22050", "-1, -44100", "0, 0", "0.00001, 0", "0.00002, 1"})
  void countsTheNearestWholeSamples(double seconds, int samples) {
    assertEquals(samples, new SampleRate(44_100).samplesIn(seconds));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 1e9, -1e9})
  void refusesDurationsItCannotCount(double seconds) {
    var refused =
        assertThrows(
            IllegalArgumentException.class, () -> new SampleRate(48_000).samplesIn(seconds));
    assertTrue(refused.getMessage().contains("" + seconds), refused.getMessage());
  }

  @ParameterizedTest
  @ValueSource(ints = {Integer.MIN_VALUE, 0, 7_999, 768_001})
  void refusesRatesOutOfRange(int hertz) {
    var refused = assertThrows(IllegalArgumentException.class, () -> new SampleRate(hertz));
    assertTrue(refused.getMessage().endsWith("not " + hertz), refused.getMessage());
  }

  @Test
  void carriesFrequenciesUpToItsHalf() {
    assertEquals(22_050, new SampleRate(44_100).nyquistHz());
  }
}
