package dev.loopgauge.verify;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.estimate.Track;
import dev.loopgauge.estimate.TrackPoint;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A followed delay against the budget of its path.
 *
 * @param worst the window that stands worst; of several the one that is furthest off
 * @param windows how many windows were compared
 * @param outside how many of them are early or late
 */
public record TrackComparison(Comparison worst, int windows, int outside) {
  /** The verdicts, the worst last. */
  private static final List<Verdict> WORSE =
      List.of(Verdict.WITHIN, Verdict.UNDECIDED, Verdict.EARLY, Verdict.LATE);

  /**
   * Compares each window of a track; empty for a track without any.
   *
   * @param allowSamples what may be missing from the chain file's own tolerances, 0 or more
   */
  public static Optional<TrackComparison> of(
      Track track, Chain chain, ChainPath path, double allowSamples) {
    List<Comparison> all =
        track.points().stream().map(point -> of(point, chain, path, allowSamples)).toList();
    return all.stream()
        .max(Comparator.comparingInt(TrackComparison::badness).thenComparing(TrackComparison::off))
        .map(worst -> new TrackComparison(worst, all.size(), (int) all.stream().filter(c -> badness(c) > 1).count()));
  }

  private static Comparison of(
      TrackPoint point, Chain chain, ChainPath path, double allowSamples) {
    return Comparison.of(point, chain, path, allowSamples);
  }

  /** Early and late are equally bad. */
  private static int badness(Comparison comparison) {
    return Math.min(2, WORSE.indexOf(comparison.verdict()));
  }

  private static double off(Comparison comparison) {
    return Math.abs(comparison.difference().samples());
  }
}
