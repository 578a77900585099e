package dev.loopgauge.journal;

import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;

/**
 * One path over all shows.
 *
 * @param rate the rate of the last trusted entry; all delays are told in its samples
 * @param points every entry, in the order of time
 * @param steps where the delay went to another level and stayed
 * @param levelSamples the level since the last step, in samples
 * @param drift how it moved since the last step; empty with fewer than ten readings since
 */
public record History(
    SampleRate rate,
    List<HistoryPoint> points,
    List<Step> steps,
    double levelSamples,
    Optional<DelayTrend> drift) {
  /**
   * A lasting change.
   *
   * @param before the last entry before it
   * @param after the first entry after it
   * @param samples how much later the path is since, level against level
   */
  public record Step(Heading before, Heading after, double samples) {}

  /** Copies the lists. */
  public History {
    points = List.copyOf(points);
    steps = List.copyOf(steps);
  }

  /**
   * The history that entries of one path make.
   *
   * @param headings the entries that stand, in the order of time
   * @return empty when none of them has a trusted number
   */
  public static Optional<History> of(List<Heading> headings) {
    return headings.stream().anyMatch(heading -> heading.delay().isPresent())
        ? Optional.of(new HistoryReader(headings).history())
        : Optional.empty();
  }
}
