package dev.loopgauge.verify.watch;

import dev.loopgauge.stats.Hinge;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Values on either side of a move, as a step or as a level that slides from some time on. Where the
 * programme paused between them that may be any time in the pause, unheard.
 *
 * @param before the values before, at least one
 * @param after the values after, at least one
 * @param slope what all slide by anyway, in units a second
 * @param scatter what values scatter by at least, as a standard deviation
 * @param pausedFrom when a pause between them began, in seconds; empty where there was none
 */
record StepOrSlide(
    List<Value> before,
    List<Value> after,
    double slope,
    double scatter,
    OptionalDouble pausedFrom) {
  /** At how many times in a pause a slide is tried. */
  private static final int TRIED = 8;

  /**
   * By how much less a step leaves of the values than a slide, as squared distances over their
   * variances.
   */
  double better() {
    List<Value> all = new ArrayList<>(before);
    all.addAll(after);
    double slide = Double.POSITIVE_INFINITY;
    for (double from : slidesFrom()) {
      slide = Math.min(slide, left(all, from));
    }
    return slide - left(before, Double.POSITIVE_INFINITY) - left(after, Double.POSITIVE_INFINITY);
  }

  /** When the level may begin to slide: one that begins after all values before is no step. */
  private List<Double> slidesFrom() {
    List<Double> times = new ArrayList<>();
    for (Value value : before.subList(0, Math.max(1, before.size() - 1))) {
      times.add(value.at());
    }
    if (pausedFrom.isPresent()) {
      double from = pausedFrom.getAsDouble();
      double lasts = after.get(0).at() - from;
      for (int i = 0; i < TRIED; i++) {
        times.add(from + lasts * i / TRIED);
      }
    }
    return times;
  }

  /** What a level that slides from a time on leaves of some values. */
  private double left(List<Value> values, double from) {
    double[] spreads =
        Arrays.stream(Value.noises(values)).map(noise -> Math.max(noise, scatter)).toArray();
    return Hinge.at(from, Value.moments(values), Value.values(values, slope), spreads).squares();
  }
}
