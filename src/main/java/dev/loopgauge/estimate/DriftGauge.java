package dev.loopgauge.estimate;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Tells from what a fitted path leaves of one reading whether its delay drifts meanwhile.
 *
 * <p>A copy x that is late by a little d leaves -d dx/dn. Over each of {@value #SEGMENTS} segments
 * d is read off by least squares, and a line through them, each weighed by its sum of (dx/dn)^2, is
 * the drift. It holds for small drifts; of one that smears the sound beyond a wave it tells no more
 * than that there is one.
 */
final class DriftGauge {
  private static final int SEGMENTS = 16;

  /** How many standard deviations a drift stands out by; 14 degrees of freedom. */
  private static final double BEYOND_DOUBT = 6;

  private DriftGauge() {}

  /** The drift, in samples a sample; empty where none stands out. */
  static OptionalDouble of(LostSound reading) {
    List<LostSound.Heard> windows = reading.windows();
    int length = windows.size() / SEGMENTS;
    if (length == 0) {
      return OptionalDouble.empty();
    }
    double[] weights = new double[SEGMENTS];
    double[] times = new double[SEGMENTS];
    double[] delays = new double[SEGMENTS];
    for (int i = 0; i < SEGMENTS; i++) {
      LostSound.Heard sum =
          windows.subList(i * length, (i + 1) * length).stream()
              .reduce(LostSound.Heard::plus)
              .orElseThrow();
      weights[i] = sum.steepness();
      times[i] = windows.get(i * length).from();
      delays[i] = weights[i] == 0 ? 0 : sum.lateness() / weights[i];
    }
    return slope(weights, times, delays);
  }

  private static OptionalDouble slope(double[] weights, double[] times, double[] delays) {
    double meanTime = mean(weights, times);
    double meanDelay = mean(weights, delays);
    double spread = 0;
    double product = 0;
    for (int i = 0; i < SEGMENTS; i++) {
      double since = times[i] - meanTime;
      spread += weights[i] * since * since;
      product += weights[i] * since * (delays[i] - meanDelay);
    }
    double slope = product / spread;
    double squares = 0;
    for (int i = 0; i < SEGMENTS; i++) {
      double off = delays[i] - meanDelay - slope * (times[i] - meanTime);
      squares += weights[i] * off * off;
    }
    double deviation = Math.sqrt(squares / (SEGMENTS - 2) / spread);
    return Math.abs(slope) > BEYOND_DOUBT * deviation
        ? OptionalDouble.of(slope)
        : OptionalDouble.empty();
  }

  private static double mean(double[] weights, double[] values) {
    double sum = 0;
    double weight = 0;
    for (int i = 0; i < SEGMENTS; i++) {
      sum += weights[i] * values[i];
      weight += weights[i];
    }
    return sum / weight;
  }
}
