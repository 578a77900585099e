package dev.loopgauge.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SignalTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final Signal SIGNAL = Signal.of(RATE, 1.0, -2.0, 3.0);

  @ParameterizedTest
  @CsvSource({
    "0, 3, 1 -2 3",
    "1, 2, -2",
    "1, 1, ''",
    "-2, 1, 0 0 1",
    "2, 5, 3 0 0",
    "-1, 4, 0 1 -2 3 0",
    "5, 7, 0 0",
    "-7, -5, 0 0",
    "2147483646, 2147483647, 0",
    "-2147483648, -2147483647, 0"
  })
  void isSilentOutsideWhatItHolds(int from, int to, String expected) {
    String[] numbers = expected.isEmpty() ? new String[0] : expected.split(" ", -1);
    double[] samples = new double[numbers.length];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = Double.parseDouble(numbers[i]);
    }

    assertArrayEquals(samples, SIGNAL.slice(from, to).toArray());
  }

  @Test
  void refusesASliceThatEndsBeforeItStarts() {
    assertThrows(IllegalArgumentException.class, () -> SIGNAL.slice(2, 1));
    assertThrows(
        IllegalArgumentException.class, () -> SIGNAL.slice(Integer.MIN_VALUE, Integer.MAX_VALUE));
  }

  @Test
  void copiesIntoTheMiddleOfAnArray() {
    double[] target = {9, 9, 9, 9, 9};

    SIGNAL.copyTo(2, target, 1, 3);

    assertArrayEquals(new double[] {9, 3, 0, 0, 9}, target);
  }

  @Test
  void cannotBeChangedFromOutside() {
    double[] samples = {1, 2};
    Signal signal = Signal.of(RATE, samples);
    samples[0] = 5;
    signal.toArray()[1] = 5;

    assertArrayEquals(new double[] {1, 2}, signal.toArray());
  }

  @Test
  void measuresItsLevel() {
    assertEquals(3, SIGNAL.peak());
    assertEquals(14, SIGNAL.energy());
    assertEquals(Math.sqrt(14 / 3.0), SIGNAL.rms(), 1e-15);
    assertArrayEquals(new double[] {-0.5, 1, -1.5}, SIGNAL.times(-0.5).toArray());
  }

  @Test
  void isSilentWhenEmpty() {
    Signal empty = Signal.silence(RATE, 0);

    assertEquals(0, empty.peak());
    assertEquals(0, empty.rms());
    assertEquals(4, Signal.silence(RATE, 4).length());
    assertEquals(0, Signal.silence(RATE, 4).peak());
  }

  @Test
  void takesFloatsAsTheyAre() {
    assertEquals(0.1f, Signal.of(RATE, 0.1f).at(0));
  }
}
