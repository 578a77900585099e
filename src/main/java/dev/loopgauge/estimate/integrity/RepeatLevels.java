package dev.loopgauge.estimate.integrity;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.stats.Quantiles;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The level of each of some readings of one stimulus, which a path that stays brings back alike,
 * whatever filter it is.
 *
 * <p>A gain is the product of arrivals and return over the arrivals' energy. Its variance is
 * counted from what pieces of 5 ms lie off it: the sum of their squared products with what it
 * leaves, over the squared energy (the "sandwich" of H. White, Econometrica 48, 1980, from memory).
 * What a fit leaves of every reading alike counts there too, so it is rather too large.
 *
 * @param gain the gain
 * @param variance its variance
 */
public record RepeatLevels(double gain, double variance) {
  /** With fewer, a step within one of two can't be told from a smaller one between them. */
  private static final int FEWEST = 3;

  private static RepeatLevels of(LostSound reading) {
    double product = 0;
    double arrivals = Double.MIN_NORMAL;
    for (LostSound.Heard heard : reading.windows()) {
      product += heard.product();
      arrivals += heard.arrivals();
    }
    double gain = product / arrivals;
    double squares = 0;
    for (LostSound.Heard heard : reading.windows()) {
      squares += Math.pow(heard.product() - gain * heard.arrivals(), 2);
    }
    return new RepeatLevels(gain, squares / (arrivals * arrivals));
  }

  /**
   * By how many dB the last readings are louder than the first, where the level steps in one of
   * those between; empty where it stays.
   *
   * @param chance how often one may be told where the level stays
   */
  public static OptionalDouble stepDb(List<LostSound> readings, double chance) {
    List<RepeatLevels> all = new ArrayList<>();
    for (LostSound reading : readings) {
      all.add(of(reading));
    }
    OptionalDouble step = OptionalDouble.empty();
    double least = chance / Math.max(1, all.size() - FEWEST + 1);
    for (int at = 1; at < all.size() - 1; at++) {
      RepeatLevels first = mean(all.subList(0, at));
      RepeatLevels last = mean(all.subList(at + 1, all.size()));
      double apart = last.gain - first.gain;
      double beyond = Quantiles.normalBeyond(apart / Math.sqrt(last.variance + first.variance));
      if (beyond < least && Math.min(first.gain, last.gain) > 0) {
        least = beyond;
        step = OptionalDouble.of(Decibels.ofFactor(last.gain / first.gain));
      }
    }
    return step;
  }

  private static RepeatLevels mean(List<RepeatLevels> some) {
    double gain = 0;
    double variance = 0;
    for (RepeatLevels one : some) {
      gain += one.gain / some.size();
      variance += one.variance / some.size();
    }
    return new RepeatLevels(gain, variance / some.size());
  }
}
