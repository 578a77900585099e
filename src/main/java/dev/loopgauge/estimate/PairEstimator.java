package dev.loopgauge.estimate;

import dev.loopgauge.estimate.reading.InParallel;
import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.PairDelay;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Samples;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoubleConsumer;

/**
 * Finds the delay between every two channels of one recording from the sound they share: the snare
 * drum in the overheads, the voice in the microphone beside it.
 */
public final class PairEstimator {
  private final DelayEstimator estimator;
  private final double maxDelaySeconds;

  /**
   * An estimator.
   *
   * @param maxDelaySeconds how far to look either way, above 0 and at most {@value
   *     LongestDelay#SECONDS}
   * @throws IllegalArgumentException when out of range
   */
  public PairEstimator(double maxDelaySeconds) {
    this.estimator = new DelayEstimator(maxDelaySeconds, ArrivalChoice.STRONGEST);
    this.maxDelaySeconds = maxDelaySeconds;
  }

  private record Pair(int from, int to) {}

  /**
   * Every two of some channels, by rising number.
   *
   * @param numbers the channels' numbers
   * @param channels the channels, one for each number, all of one rate
   * @param progress is told how much is done, 0 to 1, from any thread
   */
  public List<PairDelay> estimate(
      List<Integer> numbers, List<? extends Samples> channels, DoubleConsumer progress) {
    List<Segments> segments = InParallel.map(channels, c -> Segments.of(c, maxDelaySeconds));
    List<Pair> pairs = new ArrayList<>();
    for (int from = 0; from < numbers.size(); from++) {
      for (int to = from + 1; to < numbers.size(); to++) {
        pairs.add(new Pair(from, to));
      }
    }
    AtomicInteger done = new AtomicInteger();
    return InParallel.map(
        pairs,
        pair -> {
          List<Reading> readings = segments.get(pair.from()).against(channels.get(pair.to()));
          PairDelay result = pair(numbers.get(pair.from()), numbers.get(pair.to()), readings);
          progress.accept((double) done.incrementAndGet() / pairs.size());
          return result;
        });
  }

  private PairDelay pair(int from, int to, List<Reading> readings) {
    Estimate estimate = estimator.estimate(readings);
    if (estimate instanceof Estimate.Found found) {
      Measurement m = found.measurement();
      return new PairDelay(from, to, Optional.of(m), coefficient(readings, m), found.findings());
    }
    return new PairDelay(from, to, Optional.empty(), 0, estimate.findings());
  }

  /** The arrival's share of the other channel's sound, as a correlation coefficient. */
  private static double coefficient(List<Reading> readings, Measurement m) {
    double one = 0;
    double other = 0;
    for (Reading reading : readings) {
      int length = reading.reference().length();
      int moved = (int) Math.rint(m.delay().samples());
      one += Loudness.of(reading.reference()).energy();
      other += Loudness.of(reading.ret().slice(moved, moved + length)).energy();
    }
    return Math.min(1, Decibels.toFactor(m.levelDb()) * Math.sqrt(one / other));
  }
}
