package dev.loopgauge.estimate;

import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.Samples;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Readings of one long recording whose clocks drift so fast that each is smeared by itself. The
 * drift is found as in a track, taken out of the return, and what then stands still is measured.
 */
final class DriftingReadings {
  private static final int FEWEST = 3;

  private final List<Reading> readings;
  private final Samples ret;
  private final double maxDelaySeconds;

  /**
   * Some readings of one recording.
   *
   * @param ret the whole return
   */
  DriftingReadings(List<Reading> readings, Samples ret, double maxDelaySeconds) {
    this.readings = readings;
    this.ret = ret;
    this.maxDelaySeconds = maxDelaySeconds;
  }

  /** The delay in the middle of the recording; empty when there is no steady drift. */
  Optional<Estimate> estimate(DelayEstimator estimator) {
    OptionalDouble drift = readings.size() < FEWEST ? OptionalDouble.empty() : drift();
    if (drift.isEmpty()) {
      return Optional.empty();
    }
    Samples steady = new Retimed(ret, middle(), drift.getAsDouble());
    List<Reading> still =
        readings.stream()
            .map(
                r ->
                    new Reading(
                        r.reference(), new Window(steady, r.start(), r.ret().length()), r.start()))
            .toList();
    return estimator.estimate(still) instanceof Estimate.Found found
        ? Optional.of(drifting(found, drift.getAsDouble()))
        : Optional.empty();
  }

  /** The drift, in samples a sample. */
  private OptionalDouble drift() {
    int rate = ret.rate().hertz();
    List<TrackPoint> points = new ArrayList<>();
    Optional<WindowDelay.Found> last = Optional.empty();
    int lastStart = 0;
    for (Reading reading : readings) {
      int length = reading.reference().length();
      int since = reading.start() - lastStart;
      Optional<WindowDelay.Found> here =
          new WindowDelay(
                  reading.reference().slice(0, length), ret, reading.start(), maxDelaySeconds)
              .find(last.map(found -> found.later(since)));
      double middle = (reading.start() + length / 2.0) / rate;
      here.ifPresent(f -> points.add(f.at(middle, ret)));
      last = here.isPresent() ? here : last;
      lastStart = here.isPresent() ? reading.start() : lastStart;
    }
    OptionalDouble perSecond = new TrackLine(0, points).steadyDrift();
    return perSecond.isPresent()
        ? OptionalDouble.of(perSecond.getAsDouble() / rate)
        : OptionalDouble.empty();
  }

  private double middle() {
    return readings.get(0).start() + length() / 2;
  }

  private double length() {
    Reading last = readings.get(readings.size() - 1);
    return (double) last.start() + last.reference().length() - readings.get(0).start();
  }

  private Estimate drifting(Estimate.Found found, double drift) {
    Measurement m = found.measurement();
    double uncertainty =
        new Uncertainty()
            .with(m.uncertaintySamples() / Measurement.COVERAGE_FACTOR)
            .with(Math.abs(drift) * length() / Math.sqrt(12))
            .expanded();
    double ppm = 1e6 * drift + m.clockDriftPpm().orElse(0);
    List<Finding> findings = new ArrayList<>(found.findings());
    findings.removeIf(finding -> finding.code() == FindingCode.CLOCKS_NOT_LOCKED);
    findings.add(Findings.drifting(ppm));
    return new Estimate.Found(
        m.ofReadings(
            m.repeats(),
            // Retimed about the middle, the copy that is late by d came d / (1 + drift) late.
            new Latency(m.delay().samples() * (1 + drift), m.delay().rate()),
            uncertainty,
            OptionalDouble.of(ppm),
            m.ambiguous()),
        findings);
  }
}
