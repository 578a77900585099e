package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.estimate.drift.Following;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Halves of a window of music through a band-pass are each most like the reference at lags of their
 * own; a drift that this makes would go on from window to window, further off each time.
 */
class FalseDriftTest {
  private static final SampleRate RATE = new SampleRate(16_000);
  private static final int WINDOW = 32_000;
  private static final int WINDOWS = 40;

  /** What the delay may be taken to move by within a window at most, in samples. */
  private static final double HARMLESS = 0.6;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void takesNoDriftFromHalvesOfFewTones(long seed) {
    double[] music =
        ShowProgramme.sound(1, RATE, WINDOWS + 4, new SplittableRandom(seed)).toArray();
    PathSound path =
        PathSound.late(40.25, 0.8)
            .through(PathSound.highPass(0.2))
            .through(PathSound.lowPass(0.7))
            .plus(PathSound.noise(1e-4, seed));
    double[] heard = heard(music, path);
    Following following = new Following(WINDOW, 0.5, true);
    for (int at = 0; at < WINDOWS * WINDOW / 2; at += WINDOW / 2) {
      Following.Look look = following.look(Signal.of(RATE, music), Signal.of(RATE, heard), at, at);
      double slid = look.found().orElseThrow().slope() * WINDOW;
      assertEquals(0, slid, HARMLESS, "at " + at / RATE.hertz() + " s");
      following.next(look, at);
    }
  }

  /** Halves of a tenth of a second of applause, of which the return has little, once fell apart. */
  @ParameterizedTest
  @ValueSource(longs = {1415, 1417, 1418})
  void triesNoDriftThatNoClockHas(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Signal applause = ShowSound.applause(RATE, 0.1, random);
    double[] late = applause.slice(-random.nextInt(1000), applause.length()).toArray();
    double[] ret = Arrays.copyOf(late, applause.length());
    Arrays.setAll(ret, i -> 0.5 * ret[i] + 5e-4 * random.nextGaussian());
    assertDoesNotThrow(
        () -> new DelayEstimator(0.2).estimate(applause, Signal.of(RATE, ret)).findings());
  }

  /**
   * A window that holds both polarities may be taken for a drift; those after it may not. The first
   * seed is that of a scene of {@code WatchEventsTest} whose windows were 1.17 samples off then.
   */
  @ParameterizedTest
  @ValueSource(longs = {143_666_442_665_423_675L, 1, 2})
  void forgetsADriftThatATurnedPolarityMade(long seed) {
    SampleRate rate = new SampleRate(8_000);
    int turned = rate.samplesIn(20.848);
    int last = rate.samplesIn(26);
    int window = rate.samplesIn(2);
    double[] applause = ShowProgramme.sound(2, rate, 44, new SplittableRandom(seed)).toArray();
    PathSound path = PathSound.late(200, 0.5).until(turned, PathSound.late(200, -0.5));
    double[] heard = heard(applause, path.plus(PathSound.noise(1e-4, seed)));
    Following following = new Following(window, 0.5, true);
    for (int at = 0; at < last; at += window / 2) {
      Following.Look look =
          following.look(Signal.of(rate, applause), Signal.of(rate, heard), at, at);
      if (at + window < turned || at > turned) {
        assertEquals(200, look.found().orElseThrow().lag(), 0.05, "at " + at / rate.hertz() + " s");
      }
      following.next(look, at);
    }
  }

  private static double[] heard(double[] programme, PathSound path) {
    double[] heard = new double[programme.length];
    for (int i = 0; i < heard.length; i++) {
      heard[i] = path.at(programme, i);
    }
    return heard;
  }
}
