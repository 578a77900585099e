package dev.loopgauge.estimate.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.PathSound;
import dev.loopgauge.estimate.ShowProgramme;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChangeDateTest {
  private static final SampleRate RATE = new SampleRate(16_000);
  private static final int DELAY = 200;
  private static final int FROM = RATE.samplesIn(1);
  private static final int TO = RATE.samplesIn(6);

  /** A half second is a fourth of a window of 2 s; of most sound it is told to some 10 ms. */
  private static final int MOST = RATE.samplesIn(0.5);

  /** 175 samples are a period of 91 Hz: a voice is like itself so much later. */
  @ParameterizedTest
  @CsvSource({"0, 175", "0, -3", "1, 64", "1, -192", "2, 1", "2, 175"})
  void liesWithinWhatItSays(int kind, int size) {
    for (int trial = 0; trial < 12; trial++) {
      SplittableRandom random = new SplittableRandom(100 * kind + trial);
      double[] sent = ShowProgramme.sound(kind, RATE, 8, random).toArray();
      int at = RATE.samplesIn(2 + 3 * random.nextDouble());
      PathSound path =
          PathSound.late(DELAY, 0.5)
              .until(at, PathSound.late(DELAY + size, 0.5))
              .plus(PathSound.noise(1e-4, trial));
      double[] back = new double[sent.length];
      for (int n = 0; n < back.length; n++) {
        back[n] = path.at(sent, n);
      }
      ChangeDate.Found found =
          new ChangeDate(Signal.of(RATE, sent), Signal.of(RATE, back))
              .between(FROM, TO, DELAY, DELAY + size);
      assertEquals(at, found.at(), found.within(), "trial " + trial);
      assertTrue(found.within() < MOST, found::toString);
    }
  }
}
