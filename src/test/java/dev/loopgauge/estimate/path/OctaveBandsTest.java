package dev.loopgauge.estimate.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class OctaveBandsTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  /** A band of a song once lay beyond the end of a transform that was half as long. */
  @Test
  void levelsAreThoseOfTheWholeReferenceThoughItsCorrelationIsCutOtherwise() {
    SplittableRandom random = new SplittableRandom(5);
    double[] noise = new double[48_000];
    double[] ret = new double[60_000];
    for (int i = 0; i < noise.length; i++) {
      noise[i] = 0.1 * random.nextGaussian();
      ret[i + 580] = 0.5 * noise[i];
    }
    List<Reading> readings = List.of(new Reading(Signal.of(RATE, noise), Signal.of(RATE, ret)));
    Spectra whole = Spectra.of(readings, 0.2);
    Spectra filtered = Spectra.of(readings, 0.2, 7_000);
    assertNotEquals(whole.auto().plan().transform(), filtered.auto().plan().transform());
    Fit fit = Fit.ofFiltered(filtered, List.of(filtered.strongest()), whole.auto());
    List<Band> bands = fit.bands();
    assertEquals(10, bands.size());
    for (Band band : bands) {
      assertEquals(-6.02, band.levelDb(), 0.1, band::toString);
    }
  }
}
