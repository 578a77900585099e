package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.stats.Slope;
import dev.loopgauge.stats.StraightLine;
import java.util.Arrays;

/**
 * The straight line through the delays of several readings over time: an offset and a drift.
 *
 * @param middle the delay at the mean time, in samples
 * @param slope the change of delay for each sample of time, and what it rests on
 * @param scatter the standard deviation of the delays about the line, in samples
 */
public record DelayLine(double middle, Slope slope, double scatter) {
  /**
   * Fits the line.
   *
   * @param times when each reading was, in samples, not all the same
   * @param delays the delay of each, in samples
   * @param noise the standard uncertainty of each delay from noise, in samples
   */
  public static DelayLine through(double[] times, double[] delays, double[] noise) {
    StraightLine line = StraightLine.even(times, delays, noise);
    return new DelayLine(line.middleY(), Slope.of(line), line.scatter());
  }

  /** The same where each delay has the same noise. */
  public static DelayLine through(double[] times, double[] delays, double noise) {
    double[] same = new double[times.length];
    Arrays.fill(same, noise);
    return through(times, delays, same);
  }

  /** Whether the delays drift, so that neither noise nor jitter can be why. */
  public boolean drifts() {
    return ClockDrift.isThere(slope);
  }

  /** The drift. */
  public ClockDrift drift() {
    return ClockDrift.of(slope);
  }
}
