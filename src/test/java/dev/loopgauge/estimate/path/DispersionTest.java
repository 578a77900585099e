package dev.loopgauge.estimate.path;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.estimate.DelayTrial;
import dev.loopgauge.estimate.ShowSound;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class DispersionTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final double DELAY = 1234.3;

  private static double dispersion(Samples reference, Samples ret) {
    Spectra spectra = Spectra.of(List.of(new Reading(reference, ret)), 0.25);
    return Fit.of(spectra, List.of(spectra.strongest())).dispersion();
  }

  /** Speech whose two halves of the band, cut apart sharply, rang into one another. */
  @Test
  void pureDelayHasNone() {
    Signal speech = ShowSound.speech(RATE, 1, new SplittableRandom(3));
    DelayTrial trial = new DelayTrial(speech);
    for (int seed = 0; seed < 20; seed++) {
      Reading reading = trial.reading(DELAY, 1, trial.noise(60, 1), new SplittableRandom(seed));
      assertEquals(0, dispersion(reading.reference(), reading.ret()), "seed " + seed);
    }
  }

  /**
   * What is above 19 kHz, where half of R'' lies, comes half a sample later: that far apart the
   * halves are, rectangular, but for what the fade between them evens out.
   */
  @Test
  void bandsThatComeApartCountAsTheyLie() {
    SplittableRandom random = new SplittableRandom(5);
    Signal noise =
        DelayTrial.asConvertersPass(Signal.of(RATE, random.doubles(RATE.hertz(), -1, 1).toArray()));
    RealFft fft = new RealFft(RealFft.lengthFor(2 * noise.length()));
    double[] low = new double[fft.length()];
    noise.copyTo(0, low, 0, noise.length());
    fft.forward(low);
    double[] high = low.clone();
    for (int i = 0; i < low.length; i++) {
      (i < low.length * 0.79 ? high : low)[i] = 0;
    }
    Packed.fractionalDelay(high, -0.5);
    for (int i = 0; i < low.length; i++) {
      low[i] += high[i];
    }
    fft.inverse(low);
    double expected = 0.5 / Math.sqrt(12);
    assertEquals(expected, dispersion(noise, Signal.of(RATE, low)), 0.3 * expected);
  }
}
