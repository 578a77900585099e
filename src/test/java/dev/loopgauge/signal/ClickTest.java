package dev.loopgauge.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ClickTest {
  /**
   * A Blackman window of n samples turns a cut-off into a slope 6/n wide (of the rate), flat before
   * and at least 70 dB down after (F. J. Harris, "On the use of windows", 1978, from memory).
   */
  @ParameterizedTest
  @CsvSource({"44100, 18522", "48000, 20000", "96000, 20000", "192000, 20000"})
  void isFlatUpToItsCutOffAndSilentAbove(int hertz, double cutoffHz) {
    Signal click = new Click(0.05).render(new SampleRate(hertz));
    double halfSlope = 3.0 / 129 * hertz;
    double flat = Spectrum.magnitude(click, cutoffHz / 4);

    for (double hz = 0; hz < cutoffHz - halfSlope; hz += 500) {
      assertEquals(0, Decibels.ofFactor(Spectrum.magnitude(click, hz) / flat), 0.01, hz + " Hz");
    }
    assertEquals(-6.02, Decibels.ofFactor(Spectrum.magnitude(click, cutoffHz) / flat), 0.1);
    for (double hz = cutoffHz + halfSlope; hz < hertz / 2.0; hz += 500) {
      assertTrue(Spectrum.magnitude(click, hz) < 0.000316 * flat, hz + " Hz");
    }
  }

  @Test
  void isSymmetricAboutItsPeakAndSilentAfterwards() {
    Signal click = new Click(0.01).render(new SampleRate(48_000));

    assertEquals(480, click.length());
    assertEquals(1, click.at(Click.CENTRE), 1e-12);
    assertEquals(click.at(Click.CENTRE), click.peak());
    for (int i = 1; i <= Click.CENTRE; i++) {
      assertEquals(click.at(Click.CENTRE - i), click.at(Click.CENTRE + i), 1e-12);
    }
    assertEquals(0, click.at(0), 1e-12);
    assertEquals(0, click.slice(2 * Click.CENTRE + 1, 480).peak());
  }

  @Test
  void isCompleteEvenWhereTheTimeIsShort() {
    assertEquals(129, new Click(0.01).render(new SampleRate(8_000)).length());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.009, 61, Double.NaN})
  void refusesOtherLengths(double seconds) {
    assertThrows(IllegalArgumentException.class, () -> new Click(seconds));
  }
}
