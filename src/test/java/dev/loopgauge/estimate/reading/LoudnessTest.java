package dev.loopgauge.estimate.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import org.junit.jupiter.api.Test;

class LoudnessTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  private static Signal steps(int length) {
    double[] samples = new double[length];
    for (int i = 0; i < length; i++) {
      samples[i] = -i;
    }
    return Signal.of(RATE, samples);
  }

  @Test
  void sumsSquaresAndFindsThePeakOfEitherSign() {
    Loudness loudness = Loudness.of(steps(5000));
    assertEquals(4999.0 * 5000 * 9999 / 6, loudness.energy(), 1);
    assertEquals(4999, loudness.peak());
  }

  /** A window knows what lies beyond its end, where the last chunk reaches. */
  @Test
  void countsNothingBeyondTheEndOfAWindow() {
    Loudness loudness = Loudness.of(new Window(steps(10_000), 0, 5000));
    assertEquals(4999, loudness.peak());
    assertEquals(5000, loudness.length());
  }

  @Test
  void tellsSilenceFromTheLastBitsOfAConverter() {
    assertTrue(Loudness.of(Signal.of(RATE, 0.0, 9e-7)).isSilent());
    assertFalse(Loudness.of(Signal.of(RATE, 2e-6, 2e-6)).isSilent());
    assertTrue(Loudness.isSilence(Signal.of(RATE, 0.0, 9e-7)));
    assertFalse(Loudness.isSilence(Signal.of(RATE, 2e-6, 2e-6)));
  }
}
