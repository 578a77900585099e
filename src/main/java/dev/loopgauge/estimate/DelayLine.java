package dev.loopgauge.estimate;

/**
 * The straight line through the delays of several readings over time: an offset and a drift, by
 * least squares (JCGM 100:2008, annex H.3, from memory).
 *
 * @param middle the delay at the mean time, in samples
 * @param slope the change of delay for each sample of time; times 10^6 it is ppm
 * @param slopeDeviation the standard uncertainty of the slope, from the scatter about the line or
 *     from the readings' own uncertainty, whichever is larger
 * @param scatter the standard deviation of the delays about the line, in samples
 */
record DelayLine(double middle, double slope, double slopeDeviation, double scatter) {
  /**
   * Fits the line.
   *
   * @param times when each reading was, in samples, not all the same
   * @param delays the delay of each, in samples
   * @param deviation the standard uncertainty of each delay, in samples
   */
  static DelayLine through(double[] times, double[] delays, double deviation) {
    double meanTime = mean(times);
    double meanDelay = mean(delays);
    double spread = 0;
    double product = 0;
    for (int i = 0; i < times.length; i++) {
      spread += (times[i] - meanTime) * (times[i] - meanTime);
      product += (times[i] - meanTime) * (delays[i] - meanDelay);
    }
    double slope = product / spread;
    double squares = 0;
    for (int i = 0; i < times.length; i++) {
      double off = delays[i] - meanDelay - slope * (times[i] - meanTime);
      squares += off * off;
    }
    double scatter = times.length > 2 ? Math.sqrt(squares / (times.length - 2)) : 0;
    double slopeDeviation = Math.max(scatter, deviation) / Math.sqrt(spread);
    return new DelayLine(meanDelay, slope, slopeDeviation, scatter);
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }

  /** Whether the slope is there beyond doubt. */
  boolean drifts() {
    return Math.abs(slope) > 4 * slopeDeviation && Math.abs(slope) > 0.2e-6;
  }

  /** The drift in parts per million; positive when the return falls further and further behind. */
  double ppm() {
    return slope * 1e6;
  }
}
