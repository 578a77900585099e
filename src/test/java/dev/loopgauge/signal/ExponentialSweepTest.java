package dev.loopgauge.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Formulas: A. Farina, AES 108th Convention, 2000, preprint 5093 (reported). */
class ExponentialSweepTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final ExponentialSweep SWEEP = ExponentialSweep.fullBand(1);

  /** Values for 20 Hz to 20 kHz in 10 s (derived from the formula). */
  @ParameterizedTest
  @CsvSource({"2, 1.003433", "3, 1.590404", "4, 2.006867", "5, 2.329900"})
  void tellsHowEarlyEachHarmonicArrives(int harmonic, double seconds) {
    assertEquals(1.447648, ExponentialSweep.fullBand(10).growthSeconds(), 5e-7);
    assertEquals(seconds, ExponentialSweep.fullBand(10).leadOfHarmonic(harmonic), 5e-7);
  }

  /**
   * The phase at the end is L (f2 - f1) turns: 2892.40 for a second of the full band; the last
   * sample lies one sample, 0.42 turns, before it (derived).
   */
  @Test
  void turnsAsOftenAsItsFormulaSays() {
    Signal sweep = SWEEP.render(RATE);
    int upwards = 0;
    for (int i = 1; i < sweep.length(); i++) {
      upwards += sweep.at(i - 1) < 0 && sweep.at(i) >= 0 ? 1 : 0;
    }

    assertEquals(2891, upwards);
  }

  @Test
  void losesThreeDecibelsAnOctave() {
    Signal sweep = SWEEP.render(RATE);
    for (double hz = 100; hz <= 6_400; hz *= 2) {
      double fallDb = Decibels.ofPower(density(sweep, hz) / density(sweep, 2 * hz));
      assertEquals(3.01, fallDb, 0.2, "from " + hz + " Hz");
    }
  }

  @Test
  void becomesOneClickWhenDeconvolved() {
    double[] response = deconvolved(SWEEP.render(RATE).toArray());
    int centre = RATE.hertz() - 1;

    for (int i = 0; i < response.length; i++) {
      boolean near = Math.abs(i - centre) < 48;
      assertTrue(near || Math.abs(response[i]) < 0.02 * response[centre], "at " + i);
    }
    assertEquals(centre, strongest(response, 0, response.length));
  }

  /** sin 3x = 3 sin x - 4 sin^3 x, so a cube makes the third harmonic and nothing above. */
  @ParameterizedTest
  @CsvSource({"2", "3"})
  void showsDistortionAsEarlyAsItSays(int harmonic) {
    double[] played = SWEEP.render(RATE).toArray();
    for (int i = 0; i < played.length; i++) {
      played[i] += 0.2 * Math.pow(played[i], harmonic);
    }
    double[] response = deconvolved(played);
    int centre = RATE.hertz() - 1;
    int lead = RATE.samplesIn(SWEEP.leadOfHarmonic(harmonic));

    int found = strongest(response, centre - lead - 500, centre - lead + 500);

    assertEquals(centre - lead, found, 1);
    assertTrue(Math.abs(response[found]) > 0.01 * response[centre]);
  }

  @Test
  void endsBelowWhatTheRateCarriesAndSaysSo() {
    SampleRate slow = new SampleRate(32_000);
    ExponentialSweep fitted = SWEEP.fittedTo(slow);

    assertEquals(new ExponentialSweep(20, 14_400, 1), fitted);
    assertEquals(SWEEP, SWEEP.fittedTo(RATE));
    Signal rendered = SWEEP.render(slow);
    assertTrue(Spectrum.magnitude(rendered, 15_500) < 0.05 * Spectrum.magnitude(rendered, 12_000));
  }

  @Test
  void startsAndEndsQuietly() {
    Signal sweep = SWEEP.render(RATE);

    assertEquals(48_000, sweep.length());
    assertEquals(0, sweep.at(0), 1e-4);
    assertEquals(0, sweep.at(47_999), 1e-4);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 100, 1",
    "100, 100, 1",
    "20, Infinity, 1",
    "20, 100, 0",
    "20, 100, 61",
    "20, 100, NaN"
  })
  void refusesWhatIsNoSweep(double startHz, double endHz, double seconds) {
    assertThrows(
        IllegalArgumentException.class, () -> new ExponentialSweep(startHz, endHz, seconds));
  }

  /** Power a hertz around a frequency: the mean over a tenth of an octave to each side. */
  private static double density(Signal signal, double hz) {
    double sum = 0;
    for (int i = -10; i <= 10; i++) {
      double magnitude = Spectrum.magnitude(signal, hz * Math.pow(2, i / 100.0));
      sum += magnitude * magnitude;
    }
    return sum / 21;
  }

  /** Farina's inverse filter: the sweep reversed in time, falling by e^(-t/L). */
  private static double[] deconvolved(double[] played) {
    double[] inverse = Spectrum.reversed(SWEEP.render(RATE).toArray());
    for (int i = 0; i < inverse.length; i++) {
      inverse[i] *= Math.exp(-i / (SWEEP.growthSeconds() * RATE.hertz()));
    }
    return Spectrum.convolve(played, inverse);
  }

  private static int strongest(double[] values, int from, int to) {
    int strongest = from;
    for (int i = from; i < to; i++) {
      strongest = Math.abs(values[i]) > Math.abs(values[strongest]) ? i : strongest;
    }
    return strongest;
  }
}
