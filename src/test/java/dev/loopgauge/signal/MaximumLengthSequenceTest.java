package dev.loopgauge.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class MaximumLengthSequenceTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  static IntStream orders() {
    return IntStream.rangeClosed(
        MaximumLengthSequence.LOWEST_ORDER, MaximumLengthSequence.HIGHEST_ORDER);
  }

  /** What defines the sequence (derived; ISO 18233:2006 builds on it): 2^n-1 at 0, else -1. */
  @Tag("campaign")
  @ParameterizedTest
  @MethodSource("orders")
  void correlatesWithItselfAtNoOtherLag(int order) {
    double[] sequence = MaximumLengthSequence.sequence(order);

    double[] correlation = Spectrum.autocorrelation(sequence);

    assertEquals((1 << order) - 1, sequence.length);
    assertEquals(sequence.length, correlation[0], 1e-3);
    for (int lag = 1; lag < sequence.length; lag++) {
      assertEquals(-1, correlation[lag], 1e-3, "lag " + lag);
    }
  }

  @ParameterizedTest
  @MethodSource("orders")
  void holdsOnlyOnesOfBothSigns(int order) {
    for (double value : MaximumLengthSequence.sequence(order)) {
      assertEquals(1, Math.abs(value));
    }
  }

  /** Lengths at 48 kHz: order 15 takes 0.683 s, order 18 takes 5.461 s (derived). */
  @ParameterizedTest
  @CsvSource({"0.01, 10", "0.68, 14", "0.683, 15", "1, 15", "5.46, 17", "5.462, 18", "60, 18"})
  void isTheLongestThatFits(double seconds, int order) {
    var stimulus = new MaximumLengthSequence(seconds);

    assertEquals(order, stimulus.order(RATE));
    assertEquals((1 << order) - 1, stimulus.render(RATE).length());
  }

  @Test
  void startsAndEndsQuietlyAndIsOtherwiseTheSequence() {
    Signal rendered = new MaximumLengthSequence(0.1).render(RATE);
    double[] sequence = MaximumLengthSequence.sequence(12);
    int fade = 48;

    assertTrue(Math.abs(rendered.at(0)) < 0.001);
    assertTrue(Math.abs(rendered.at(rendered.length() - 1)) < 0.001);
    for (int i = fade; i < sequence.length - fade; i++) {
      assertEquals(sequence[i], rendered.at(i));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.009, 61, Double.NaN})
  void refusesOtherLengths(double seconds) {
    assertThrows(IllegalArgumentException.class, () -> new MaximumLengthSequence(seconds));
  }
}
