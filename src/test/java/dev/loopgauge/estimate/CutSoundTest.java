package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pairs of recordings that start and end together in the midst of sound that goes on. */
@Tag("campaign")
class CutSoundTest {
  private static final SampleRate RATE = new SampleRate(16_000);
  private static final int TRIALS = 100;
  private static final double SNR_DB = 20;

  private static Signal sound(String kind, SplittableRandom random) {
    return switch (kind) {
      case "speech" -> ShowSound.speech(RATE, 1.4, random);
      case "music" -> ShowSound.music(RATE, 1.4, random);
      default -> ShowSound.applause(RATE, 1.4, random);
    };
  }

  /** A second of a sound, and the same later in noise: its last part is not in the return. */
  private record Pair(Signal reference, Signal ret, int delay, double noise) {
    static Pair of(String kind, int seed) {
      SplittableRandom random = new SplittableRandom(seed);
      Signal whole = sound(kind, random);
      int from = RATE.samplesIn(0.2);
      int delay = random.nextInt(RATE.samplesIn(0.09));
      Signal reference = whole.slice(from, from + RATE.hertz());
      double noise = reference.rms() / Decibels.toFactor(SNR_DB);
      double[] ret = new double[reference.length()];
      for (int i = 0; i < ret.length; i++) {
        ret[i] = whole.at(from + i - delay) + noise * random.nextGaussian();
      }
      return new Pair(reference, Signal.of(RATE, ret), delay, noise);
    }

    Optional<Measurement> measured() {
      Estimate estimate = new DelayEstimator(0.1).estimate(List.of(new Reading(reference, ret)));
      return estimate instanceof Estimate.Found f ? Optional.of(f.measurement()) : Optional.empty();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"speech", "music", "applause"})
  void anEdgeMakesNoArrivals(String kind) {
    IntStream.range(0, TRIALS)
        .forEach(
            seed ->
                Pair.of(kind, seed)
                    .measured()
                    .ifPresent(m -> assertEquals(1, m.arrivals().size(), kind + ", seed " + seed)));
  }

  /**
   * The bound is that of all of the second; what the return misses and the margins beside the edges
   * take up to a fifth of its energy. Of 100 errors 95 would be inside, give or take 2.
   */
  @ParameterizedTest
  @ValueSource(strings = {"speech", "music", "applause"})
  void theUncertaintyIsNearlyThatOfWholeSound(String kind) {
    int inside = 0;
    double wide = 0;
    List<Integer> refused = new ArrayList<>();
    for (int seed = 0; seed < TRIALS; seed++) {
      Pair pair = Pair.of(kind, seed);
      Optional<Measurement> measured = pair.measured();
      if (measured.isEmpty()) {
        refused.add(seed);
        continue;
      }
      double uncertainty = measured.get().uncertaintySamples();
      inside += Math.abs(measured.get().delay().samples() - pair.delay()) <= uncertainty ? 1 : 0;
      wide += uncertainty / (2 * new DelayTrial(pair.reference()).bound(pair.noise(), 1));
    }
    int found = TRIALS - refused.size();
    assertTrue(found >= 97, kind + ", refused: " + refused);
    assertTrue(inside >= 0.89 * found, kind + ": " + inside + " inside");
    assertTrue(wide < 1.2 * found, kind + ": " + wide / found + " times the bound");
  }
}
