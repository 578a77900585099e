package dev.loopgauge.verify.watch;

import dev.loopgauge.stats.StraightLine;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Values on either side of a move, as a step or as a level that slides: along a line through all of
 * them, or along one that left the level in a pause of the programme, unheard.
 *
 * @param before the values before, at least one
 * @param after the values after, at least one
 * @param slope what all slide by anyway, in units a second
 * @param pausedFrom when a pause between them began, in seconds; empty where there was none
 */
record StepOrSlide(List<Value> before, List<Value> after, double slope, OptionalDouble pausedFrom) {
  /** By how much less a step leaves of the values than a slide, as squared distances. */
  double better() {
    List<Value> all = new ArrayList<>(before);
    all.addAll(after);
    double level = squares(before, 0, mean(before), 0);
    double slide = line(all).squares();
    if (pausedFrom.isPresent()) {
      slide = Math.min(slide, level + leftInPause(pausedFrom.getAsDouble()));
    }
    return slide - level - squares(after, 0, mean(after), 0);
  }

  /** How far values lie from their own line, where that left the level in the pause. */
  private double leftInPause(double begins) {
    double level = mean(before);
    StraightLine own = line(after);
    double meets = own.middleX() + (level - own.middleY()) / own.slope();
    if (meets >= begins && meets <= after.get(0).middle()) {
      return own.squares();
    }
    double rise = 0;
    double run = 0;
    for (Value value : after) {
      double time = value.middle() - begins;
      rise += time * (value.without(slope) - level);
      run += time * time;
    }
    return squares(after, begins, level, rise / run);
  }

  private double mean(List<Value> values) {
    return Value.mean(Value.values(values, slope));
  }

  private StraightLine line(List<Value> values) {
    return StraightLine.even(
        Value.middles(values), Value.values(values, slope), Value.noises(values));
  }

  /** The squared distances from a line. */
  private double squares(List<Value> values, double time, double level, double perSecond) {
    double sum = 0;
    for (Value value : values) {
      sum += Math.pow(value.without(slope) - level - perSecond * (value.middle() - time), 2);
    }
    return sum;
  }
}
