package dev.loopgauge.verify;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.estimate.result.Track;
import dev.loopgauge.estimate.result.TrackPoint;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * A followed delay against the budget of its path.
 *
 * @param worst the window that stands worst
 * @param windows how many windows were compared
 * @param outside how many of them are early or late
 */
public record TrackComparison(Comparison worst, int windows, int outside) {
  /**
   * Compares each window of a track; empty for a track without any.
   *
   * @param allowSamples what may be missing from the chain file's own tolerances, 0 or more
   */
  public static Optional<TrackComparison> of(
      Track track, Chain chain, ChainPath path, double allowSamples) {
    List<TrackPoint> points = track.points();
    if (points.isEmpty()) {
      return Optional.empty();
    }
    Comparison any = Comparison.of(points.get(0), chain, path, allowSamples);
    double budget = any.predicted().samples();
    double limit = any.toleranceSamples() + allowSamples;
    ToDoubleFunction<TrackPoint> nearEnd = point -> off(point, budget) - point.uncertaintySamples();
    ToDoubleFunction<TrackPoint> farEnd = point -> off(point, budget) + point.uncertaintySamples();
    int outside = (int) points.stream().filter(p -> nearEnd.applyAsDouble(p) > limit).count();
    Comparator<TrackPoint> worse = Comparator.comparingDouble(outside > 0 ? nearEnd : farEnd);
    TrackPoint worst = points.stream().max(worse).orElseThrow();
    return Optional.of(
        new TrackComparison(
            Comparison.of(worst, chain, path, allowSamples), points.size(), outside));
  }

  private static double off(TrackPoint point, double budget) {
    return Math.abs(point.delay().samples() - budget);
  }
}
