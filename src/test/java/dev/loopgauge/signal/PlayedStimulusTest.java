package dev.loopgauge.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class PlayedStimulusTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  @ParameterizedTest
  @EnumSource
  void peaksAtTheLevel(StimulusKind kind) {
    double peakDbfs = Decibels.ofFactor(new PlayedStimulus(kind, 1, -20).render(RATE).peak());

    assertEquals(-20, peakDbfs, 0.001);
  }

  @ParameterizedTest
  @EnumSource
  void neverPassesFullScale(StimulusKind kind) {
    for (double seconds : new double[] {0.01, 0.1, 1}) {
      assertTrue(new PlayedStimulus(kind, seconds, 0).render(RATE).peak() <= 1);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesLevelsThatCannotBePlayed(double levelDbfs) {
    var refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> new PlayedStimulus(StimulusKind.SWEEP, 1, levelDbfs));

    assertTrue(refused.getMessage().contains("not at " + levelDbfs), refused.getMessage());
  }

  @Test
  void refusesALengthBeforeItIsRendered() {
    assertThrows(
        IllegalArgumentException.class, () -> new PlayedStimulus(StimulusKind.MLS, 61, -20));
  }
}
