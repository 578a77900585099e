package dev.loopgauge.journal;

import dev.loopgauge.stats.Trend;

/**
 * A slow move of the delay since its last step.
 *
 * @param readings how many readings tell of it
 * @param days how long they took
 * @param samplesPerDay how much later the path gets each day
 * @param low the lower end of its 95 % interval
 * @param high the upper end
 * @param isThere whether it is more than chance and more than a breath of air
 */
public record DelayTrend(
    int readings, double days, double samplesPerDay, double low, double high, boolean isThere) {
  /** Air and clocks breathe: a drift that has moved the path less than this is none. */
  private static final double LEAST_SAMPLES = 0.1;

  static DelayTrend of(double[] days, double[] samples) {
    Trend trend = Trend.of(days, samples);
    double span = days[days.length - 1] - days[0];
    return new DelayTrend(
        days.length,
        span,
        trend.slope(),
        trend.low(),
        trend.high(),
        trend.isThere() && Math.abs(trend.slope()) * span > LEAST_SAMPLES);
  }
}
