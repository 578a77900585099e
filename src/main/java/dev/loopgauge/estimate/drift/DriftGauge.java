package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.integrity.LostSound;
import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.stats.Slope;
import dev.loopgauge.stats.StraightLine;
import java.util.List;
import java.util.Optional;

/**
 * Tells from what a fitted path leaves of one reading whether its delay drifts meanwhile.
 *
 * <p>A copy x that is late by a little d leaves -d dx/dn. Over each of {@value #SEGMENTS} segments
 * d is read off by least squares, and a line through them, each weighed by its sum of (dx/dn)^2, is
 * the drift. It holds for small drifts; of one that smears the sound beyond a wave it tells no more
 * than that there is one.
 */
public final class DriftGauge {
  private static final int SEGMENTS = 16;

  /**
   * How many standard deviations a drift stands out by: Student's t with 14 degrees of freedom is
   * beyond that once in 31,000 times.
   */
  static final double BEYOND_DOUBT = 6;

  private DriftGauge() {}

  /** How the delay drifts within a fit's only reading, in samples a sample, if that can be told. */
  public static Optional<Slope> of(Fit fit) {
    List<LostSound> readings = fit.residualTests().lostSound();
    return readings.size() == 1 ? of(readings.get(0)) : Optional.empty();
  }

  private static Optional<Slope> of(LostSound reading) {
    List<LostSound.Heard> windows = reading.windows();
    int length = windows.size() / SEGMENTS;
    if (length == 0) {
      return Optional.empty();
    }
    double[] weights = new double[SEGMENTS];
    double[] times = new double[SEGMENTS];
    double[] delays = new double[SEGMENTS];
    double all = 0;
    for (int i = 0; i < SEGMENTS; i++) {
      LostSound.Heard sum = windows.get(i * length);
      for (int k = i * length + 1; k < (i + 1) * length; k++) {
        sum = sum.plus(windows.get(k));
      }
      weights[i] = sum.steepness();
      times[i] = windows.get(i * length).from();
      delays[i] = weights[i] == 0 ? 0 : sum.lateness() / weights[i];
      all += weights[i];
    }
    return all > 0
        ? Optional.of(Slope.of(StraightLine.weighted(times, delays, weights)))
        : Optional.empty();
  }

  /** Whether a drift stands out. */
  public static boolean standsOut(Slope drift) {
    return Math.abs(drift.value()) > BEYOND_DOUBT * drift.fromScatter();
  }
}
