package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.integrity.DelaySeries;
import dev.loopgauge.estimate.integrity.LostSound;
import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.stats.Slope;
import java.util.List;
import java.util.Optional;

/** Tells from what a fitted path leaves of one reading whether its delay drifts meanwhile. */
public final class DriftGauge {
  /**
   * How many standard deviations a drift stands out by: Student's t with 14 degrees of freedom is
   * beyond that once in 31,000 times.
   */
  static final double BEYOND_DOUBT = 6;

  private DriftGauge() {}

  /**
   * How the delay drifts within a fit's only reading, in samples a sample; empty where that can't
   * be told.
   */
  public static Optional<Slope> of(Fit fit) {
    List<LostSound> readings = fit.residualTests().lostSound();
    if (readings.size() != 1) {
      return Optional.empty();
    }
    Optional<DelaySeries> series = DelaySeries.of(readings.get(0).windows());
    return series.isPresent() ? Optional.of(Slope.of(series.get().line())) : Optional.empty();
  }

  /** Whether so much is left that a delay may move beyond a wave, where its drift tells nothing. */
  public static boolean isSmeared(Measurement measurement) {
    return measurement.signalToNoiseDb() < Decibels.ofPower(1 / DelaySeries.LEFT);
  }

  /** Whether a drift stands out. */
  public static boolean standsOut(Slope drift) {
    return Math.abs(drift.value()) > BEYOND_DOUBT * drift.fromScatter();
  }
}
