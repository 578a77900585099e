package dev.loopgauge.estimate.result;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The delay through a long recording.
 *
 * @param windowSeconds how long each window was
 * @param points the delay of each window that could be read, in order of time
 * @param leftOut in how many windows the delay could not be told
 * @param drift how the clocks drift apart between steps; empty where fewer than three points, or
 *     too many steps, leave nothing to tell it from jitter
 * @param steps where the delay changed for good, in order of time
 * @param findings what to know besides; one that refuses when there is no point at all
 */
public record Track(
    double windowSeconds,
    List<TrackPoint> points,
    int leftOut,
    Optional<ClockDrift> drift,
    List<Step> steps,
    List<Finding> findings) {
  /** Copies the lists. */
  public Track {
    points = List.copyOf(points);
    steps = List.copyOf(steps);
    findings = List.copyOf(findings);
  }

  /** How fast the return falls behind between steps, in parts per million, where known. */
  public OptionalDouble driftPpm() {
    return drift.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(drift.get().ppm());
  }
}
