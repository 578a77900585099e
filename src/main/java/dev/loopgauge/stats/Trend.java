package dev.loopgauge.stats;

import java.util.Arrays;

/**
 * A steady rise or fall: the slope by P. K. Sen, "Estimates of the regression coefficient based on
 * Kendall's tau", J. Am. Stat. Assoc. 63, 1968, its interval, and the test by H. B. Mann,
 * Econometrica 13, 1945, and M. G. Kendall, "Rank Correlation Methods", 1975 (from memory). Some
 * wild readings among many don't move it.
 *
 * @param slope the median of the slopes between all pairs of readings
 * @param low the lower end of its 95 % interval
 * @param high the upper end
 * @param s Kendall's S: pairs that rise less pairs that fall
 * @param z S in its standard deviations under no trend, with the correction for continuity
 */
public record Trend(double slope, double low, double high, long s, double z) {
  /** The fewest readings that the normal approximation to S is good for. */
  public static final int FEWEST = 10;

  /** More would take longer than people wait; readings are then taken together first. */
  static final int MOST = 200;

  /** The two-sided 95 % point of the normal distribution. */
  private static final double Z95 = 1.96;

  /**
   * The trend of readings.
   *
   * @param times when they were made, rising, at least two of them different
   * @param values what was read, as many
   */
  public static Trend of(double[] times, double[] values) {
    return times.length > MOST
        ? ofAll(grouped(times), grouped(values))
        : ofAll(times.clone(), values.clone());
  }

  /** The medians of {@value #MOST} groups of neighbours. */
  private static double[] grouped(double[] values) {
    double[] medians = new double[MOST];
    for (int i = 0; i < MOST; i++) {
      int from = (int) ((long) i * values.length / MOST);
      int to = (int) ((i + 1L) * values.length / MOST);
      medians[i] = Median.of(values, from, to);
    }
    return medians;
  }

  private static Trend ofAll(double[] times, double[] values) {
    int count = times.length;
    double[] slopes = new double[count * (count - 1) / 2];
    int used = 0;
    long s = 0;
    for (int i = 0; i < count; i++) {
      for (int j = i + 1; j < count; j++) {
        s += (long) Math.signum(values[j] - values[i]);
        if (times[j] > times[i]) {
          slopes[used++] = (values[j] - values[i]) / (times[j] - times[i]);
        }
      }
    }
    double[] sorted = Arrays.copyOf(slopes, used);
    Arrays.sort(sorted);
    double deviation = Math.sqrt(variance(values));
    double half = Z95 * deviation;
    return new Trend(
        Median.of(sorted),
        sorted[rank((used - half) / 2 - 1, used)],
        sorted[rank((used + half) / 2, used)],
        s,
        s == 0 ? 0 : (s - Long.signum(s)) / deviation);
  }

  private static int rank(double wanted, int count) {
    return (int) Math.max(0, Math.min(count - 1, Math.round(wanted)));
  }

  /** Of S when there is no trend, equal readings counted as ties. */
  private static double variance(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    double sum = term(values.length);
    int from = 0;
    for (int i = 1; i <= sorted.length; i++) {
      if (i == sorted.length || sorted[i] != sorted[from]) {
        sum -= term(i - from);
        from = i;
      }
    }
    return sum / 18;
  }

  private static double term(double count) {
    return count * (count - 1) * (2 * count + 5);
  }

  /** Whether there is a trend: no trend would give as much in less than one case of twenty. */
  public boolean isThere() {
    return Math.abs(z) > Z95;
  }

  /**
   * The median of the slopes between neighbours alone: rougher than Sen's, but steps don't disturb
   * it as long as most neighbours have none between them. Of two middle ones it is the smaller in
   * magnitude, since the other may be a step.
   *
   * @param times rising
   * @param values as many, at least two
   */
  public static double betweenNeighbours(double[] times, double[] values) {
    double[] slopes = new double[values.length - 1];
    Arrays.setAll(slopes, i -> (values[i + 1] - values[i]) / (times[i + 1] - times[i]));
    Arrays.sort(slopes);
    double low = slopes[(slopes.length - 1) / 2];
    double high = slopes[slopes.length / 2];
    return Math.abs(low) < Math.abs(high) ? low : high;
  }
}
