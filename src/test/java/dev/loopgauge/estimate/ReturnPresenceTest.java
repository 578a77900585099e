package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.watch.WatchEvent;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReturnPresenceTest {
  private static final SampleRate RATE = new SampleRate(8_000);

  /** Two pieces of 5 ms. */
  private static final double EDGE = 0.01;

  /** Of sound that goes on, however long the loss: within a window, or most of two. */
  @ParameterizedTest
  @CsvSource({"0.15, false", "0.15, true", "1.3, false", "1.3, true", "3, false"})
  void tellsALossToTwoPieces(double seconds, boolean filtered) {
    for (int trial = 0; trial < 4; trial++) {
      double[] sent = ShowProgramme.sound(1, RATE, 30, new SplittableRandom(trial)).toArray();
      double from = 14 + 0.37 * trial;
      PathSound path = PathSound.late(200, 0.5);
      path = filtered ? path.through(PathSound.lowPass(0.4)) : path;
      path =
          path.silent(RATE.samplesIn(from), RATE.samplesIn(from + seconds))
              .plus(PathSound.noise(1e-5, trial));
      WatchedSound watched = new WatchedSound(RATE, new WatchPlan(2, 1, 0.5), 1);
      watched.hear(sent, List.of(path));
      watched.finish();
      List<WatchEvent> events = watched.events(0);
      assertEquals(2, events.size(), events::toString);
      WatchEvent.LostSound ended = (WatchEvent.LostSound) events.get(1);
      assertEquals(from, events.get(0).atSeconds(), EDGE);
      assertEquals(1000 * seconds, ended.ms().orElseThrow(), 2000 * EDGE);
    }
  }
}
