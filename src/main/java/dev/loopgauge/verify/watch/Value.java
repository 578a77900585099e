package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.SentLevel;
import java.util.List;
import java.util.Optional;

/**
 * What a window says of something that should stay.
 *
 * @param from when the window starts, in seconds
 * @param to when it ends
 * @param at the moment in it that the value tells of
 * @param value what was read
 * @param noise the standard uncertainty of that from noise
 * @param sent the programme that it was read from; empty where the value can't go by that
 */
record Value(
    double from, double to, double at, double value, double noise, Optional<SentLevel> sent) {
  /** Windows that overlap by no more than rounding don't, in seconds. */
  private static final double ROUNDING = 1e-6;

  /** Whether this window begins where another has ended: then both read sound of their own. */
  boolean isApartFrom(Value earlier) {
    return from >= earlier.to - ROUNDING;
  }

  /** The value with a slope, in units a second, taken out. */
  double without(double slope) {
    return value - slope * at;
  }

  static double[] values(List<Value> values, double slope) {
    double[] all = new double[values.size()];
    for (int i = 0; i < all.length; i++) {
      all[i] = values.get(i).without(slope);
    }
    return all;
  }

  static double[] noises(List<Value> values) {
    double[] all = new double[values.size()];
    for (int i = 0; i < all.length; i++) {
      all[i] = values.get(i).noise;
    }
    return all;
  }

  static double[] moments(List<Value> values) {
    double[] all = new double[values.size()];
    for (int i = 0; i < all.length; i++) {
      all[i] = values.get(i).at;
    }
    return all;
  }

  static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }
}
