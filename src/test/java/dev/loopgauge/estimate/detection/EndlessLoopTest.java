package dev.loopgauge.estimate.detection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.ShowSound;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * A loop that both channels hear from the middle on, as a click track or a playback is recorded: it
 * fits one turn on as well, and of a long turn the recording holds less at one lag than at another.
 */
class EndlessLoopTest {
  private static final SampleRate RATE = new SampleRate(16_000);
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.3);
  private static final int TRIALS = 48;

  /** Plays in turns of 50 to 250 ms, for 0.5 to 2.5 s; turns may differ by a little. */
  private static final class Loop {
    private final Signal turn;
    private final int delay;
    private final double[] played;
    private final int length;
    private final double noise;

    Loop(int seed) {
      SplittableRandom random = new SplittableRandom(seed);
      double period = 0.05 + 0.2 * random.nextDouble();
      this.turn = turn(seed % 3, period, random);
      this.length = RATE.samplesIn(0.5 + 2 * random.nextDouble());
      this.delay = 10 + random.nextInt(1500);
      double rms = turn.rms();
      this.noise = rms * Math.pow(10, -(20 + 20 * (seed % 4)) / 20.0);
      double differs = seed % 2 * 0.01 * rms;
      this.played = new double[length + RATE.samplesIn(0.1)];
      for (int i = 0; i < played.length; i++) {
        played[i] = turn.at(i % turn.length()) + differs * random.nextGaussian();
      }
    }

    private static Signal turn(int kind, double period, SplittableRandom random) {
      return switch (kind) {
        case 0 -> ShowSound.music(RATE, period, random);
        case 1 -> ShowSound.speech(RATE, period, random);
        default -> ShowSound.pattern(ShowSound.drumKit(RATE, random), period, random);
      };
    }

    Reading reading(SplittableRandom random) {
      int before = played.length - length;
      double[] ret = new double[length];
      for (int i = 0; i < length; i++) {
        ret[i] = played[before + i - delay] + noise * random.nextGaussian();
      }
      Signal reference = Signal.of(RATE, played).slice(before, played.length);
      return new Reading(reference, Signal.of(RATE, ret));
    }
  }

  @Test
  void noTurnIsTakenForTheNext() {
    List<String> wrong = new ArrayList<>();
    for (int seed = 0; seed < TRIALS; seed++) {
      Loop loop = new Loop(seed);
      Estimate estimate =
          ESTIMATOR.estimate(List.of(loop.reading(new SplittableRandom(TRIALS + seed))));
      if (estimate instanceof Estimate.Found found && !found.measurement().ambiguous()) {
        double off = Math.abs(found.measurement().delay().samples() - loop.delay);
        if (off > 2.5 * found.measurement().uncertaintySamples()) {
          wrong.add(seed + ": off by " + off + " of a turn of " + loop.turn.length());
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  /** The limit's other side: what never repeats is read from the middle on as well. */
  @Test
  void soundThatNeverRepeatsIsReadFromTheMiddle() {
    for (int seed = 0; seed < 6; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      Signal whole = ShowSound.music(RATE, 2.2, random);
      int from = RATE.samplesIn(0.2);
      Reading reading =
          new Reading(
              whole.slice(from, from + 2 * RATE.hertz()),
              whole.slice(from - 700, from - 700 + 2 * RATE.hertz()));
      Estimate estimate = ESTIMATOR.estimate(List.of(reading));
      Optional<Double> delay =
          estimate instanceof Estimate.Found found
              ? Optional.of(found.measurement().delay().samples())
              : Optional.empty();
      assertTrue(delay.isPresent(), estimate::toString);
      assertEquals(700, delay.get(), 0.01);
    }
  }
}
