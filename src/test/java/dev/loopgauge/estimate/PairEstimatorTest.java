package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.PairDelay;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** A drum kit in numbers: snare, hi-hat and floor tom, each by its own microphone and overheads. */
class PairEstimatorTest {
  private static final long SEED = 17;
  private static final int SECONDS = 8;
  private static final int RATE = Programme.RATE.hertz();

  /** Strokes at uneven times: each a burst of noise that rings off. */
  private static double[] strokes(double perSecond, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] sound = new double[SECONDS * RATE];
    double level = 0;
    for (int i = 0; i < sound.length; i++) {
      level = random.nextDouble() < perSecond / RATE ? 0.3 : level * 0.998;
      sound[i] = level * random.nextGaussian();
    }
    return sound;
  }

  private static Signal microphone(long seed, double[][] sounds, int[] delays, double[] gains) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] heard = new double[SECONDS * RATE];
    for (int i = 0; i < heard.length; i++) {
      heard[i] = 1e-4 * random.nextGaussian();
      for (int s = 0; s < sounds.length; s++) {
        heard[i] += i < delays[s] ? 0 : gains[s] * sounds[s][i - delays[s]];
      }
    }
    return Signal.of(Programme.RATE, heard);
  }

  private static Map<String, PairDelay> kit() {
    double[] snare = strokes(4, SEED);
    double[] tom = strokes(2, SEED + 1);
    double[][] kit = {snare, tom};
    List<Signal> channels =
        List.of(
            microphone(1, kit, new int[] {2, 20}, new double[] {1, 0.02}),
            microphone(2, kit, new int[] {22, 3}, new double[] {0.02, 1}),
            microphone(3, kit, new int[] {34, 40}, new double[] {0.3, 0.1}),
            microphone(4, kit, new int[] {39, 31}, new double[] {-0.3, -0.1}),
            microphone(5, new double[][] {strokes(3, SEED + 2)}, new int[1], new double[] {1}));
    Map<String, PairDelay> pairs = new TreeMap<>();
    new PairEstimator(0.1)
        .estimate(List.of(1, 2, 3, 4, 9), channels, share -> {})
        .forEach(pair -> pairs.put(pair.from() + "-" + pair.to(), pair));
    return pairs;
  }

  private static Measurement measured(Map<String, PairDelay> pairs, String which) {
    return pairs.get(which).measured().orElseThrow();
  }

  @Test
  void findsEveryPairOfTheKitAndNoneWithAnotherRoom() {
    Map<String, PairDelay> pairs = kit();
    assertEquals(10, pairs.size(), "seed " + SEED);
    assertEquals(32, measured(pairs, "1-3").delay().samples(), 0.2, "seed " + SEED);
    assertEquals(37, measured(pairs, "1-4").delay().samples(), 0.2, "seed " + SEED);
    assertEquals(5, measured(pairs, "3-4").delay().samples(), 0.2, "seed " + SEED);
    assertEquals(Polarity.INVERTED, measured(pairs, "1-4").polarity());
    assertEquals(-10.5, measured(pairs, "1-3").levelDb(), 0.5, "seed " + SEED);
    for (String other : List.of("1-9", "2-9", "3-9", "4-9")) {
      assertTrue(pairs.get(other).measured().isEmpty(), other + ", seed " + SEED);
      assertEquals(0, pairs.get(other).coefficient(), other);
    }
  }

  @Test
  void correlationTellsCloseFromDistant() {
    Map<String, PairDelay> pairs = kit();
    assertTrue(pairs.get("1-3").coefficient() > 0.85, "seed " + SEED + pairs.get("1-3"));
    assertTrue(pairs.get("3-4").coefficient() > 0.8, "seed " + SEED + pairs.get("3-4"));
    assertTrue(
        pairs.get("2-3").coefficient() < pairs.get("1-3").coefficient(),
        "seed " + SEED + pairs.get("2-3"));
  }
}
