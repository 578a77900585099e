package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The strongest arrival in what is left of readings that were cut to it. */
class CutSpectraTest {
  private static final SampleRate RATE = new SampleRate(8_000);
  private static final int LENGTH = 16_000;
  private static final int DELAY = 300;
  private static final int LOUD_FROM = 15_000;

  private static double[] noise(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] noise = new double[LENGTH];
    for (int i = 0; i < LENGTH; i++) {
      noise[i] = random.nextGaussian();
    }
    return noise;
  }

  /**
   * A reference that is loud at its end, of which the end comes at one delay, all else at another.
   */
  private static Spectra heard(int delay, double gain) {
    double[] sent = noise(1);
    double[] back = noise(2);
    for (int i = LOUD_FROM; i < LENGTH; i++) {
      sent[i] *= 4;
    }
    for (int i = 0; i < LENGTH; i++) {
      back[i] *= 0.1;
      back[i] += i - DELAY >= LOUD_FROM ? sent[i - DELAY] : 0;
      back[i] += i - delay >= 0 && i - delay < LOUD_FROM ? gain * sent[i - delay] : 0;
    }
    Reading reading = new Reading(Signal.of(RATE, sent), Signal.of(RATE, back));
    return Spectra.of(List.of(reading), 0.1);
  }

  private static void assertIsAsSearched(Spectra spectra) {
    Spectra cut = spectra.ofParts(spectra.recordedOf(spectra.strongest()).readings());
    FittedArrival searched = cut.strongest(cut.cross());
    assertTrue(cut.longestReference() < LENGTH);
    assertEquals(searched.lag(), cut.strongest().lag(), 1e-6);
    assertEquals(searched.gain(), cut.strongest().gain(), 1e-9);
  }

  @Test
  void isTheOneThatTheyWereCutToWhereNoneRivalsIt() {
    Spectra spectra = heard(DELAY, 1);
    assertEquals(DELAY, spectra.strongest().lag(), 0.01);
    assertIsAsSearched(spectra);
  }

  /** The loud end is cut off, and with it all of what was strongest. */
  @ParameterizedTest
  @ValueSource(ints = {750, 420, -550})
  void isSearchedAnewWhereAnotherIsStronger(int delay) {
    Spectra spectra = heard(delay, 0.5);
    assertEquals(DELAY, spectra.strongest().lag(), 0.01);
    assertIsAsSearched(spectra);
  }
}
