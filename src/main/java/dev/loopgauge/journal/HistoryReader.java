package dev.loopgauge.journal;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.stats.ChangePoints;
import dev.loopgauge.stats.Median;
import dev.loopgauge.stats.RobustScatter;
import dev.loopgauge.stats.Segment;
import dev.loopgauge.stats.Trend;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** Works out the history of a path. */
final class HistoryReader {
  /** Air and clocks breathe: the least standard deviation that a reading is given, in samples. */
  private static final double LEAST_SPREAD = 0.05;

  /** With fewer readings, a single step would count as scatter. */
  private static final int FEWEST_TO_SCATTER = 6;

  /** Digital rigs step by whole samples; what rounds to none is a drift, or noise. */
  private static final double LEAST_STEP = 0.5;

  /** With fewer readings before it, one that is far off is no outlier: nobody knows which is. */
  private static final int FEWEST_BEFORE = 3;

  private static final double MS_PER_DAY = 86_400_000;

  private final List<Heading> headings;
  private final List<Heading> trusted;
  private final SampleRate rate;
  private final double[] samples;
  private final double[] spread;
  private final List<Segment> segments;
  private final boolean[] outlier;

  HistoryReader(List<Heading> headings) {
    this.headings = headings;
    this.trusted = headings.stream().filter(heading -> heading.delay().isPresent()).toList();
    this.rate = delay(trusted.size() - 1).delay().rate();
    this.samples = indices().mapToDouble(i -> delay(i).at(rate).delay().samples()).toArray();
    double scatter = samples.length < FEWEST_TO_SCATTER ? 0 : RobustScatter.fromMoves(samples);
    this.spread = indices().mapToDouble(i -> spread(i, scatter)).toArray();
    this.segments = new ChangePoints(LEAST_STEP, FEWEST_BEFORE).segments(samples, spread);
    this.outlier = new boolean[samples.length];
    segments.forEach(this::markOutliers);
  }

  private LoggedDelay delay(int index) {
    return trusted.get(index).delay().orElseThrow();
  }

  private IntStream indices() {
    return IntStream.range(0, trusted.size());
  }

  /** Expanded uncertainties are twice the standard ones. */
  private double spread(int index, double scatter) {
    double own = delay(index).at(rate).uncertaintySamples() / 2;
    return Math.max(LEAST_SPREAD, Math.max(own, scatter));
  }

  /** By the modified z-score of Iglewicz and Hoaglin, 1993, around the line of any drift. */
  private void markOutliers(Segment segment) {
    int[] all = IntStream.range(segment.from(), segment.to()).toArray();
    Optional<Trend> trend = all.length < Trend.FEWEST ? Optional.empty() : trend(all);
    double slope = trend.filter(Trend::isThere).map(Trend::slope).orElse(0.0);
    double[] left = new double[all.length];
    for (int i = 0; i < all.length; i++) {
      left[i] = samples[all[i]] - slope * days(all[i]);
    }
    double middle = Median.of(left);
    double scale = RobustScatter.aboutMedian(left);
    for (int i = 0; i < all.length; i++) {
      double own = Math.max(scale, spread[all[i]]);
      outlier[all[i]] = Math.abs(left[i] - middle) > ChangePoints.LIMIT * own;
    }
  }

  private Optional<Trend> trend(int[] chosen) {
    double[] days = IntStream.of(chosen).mapToDouble(this::days).toArray();
    return days[0] < days[days.length - 1]
        ? Optional.of(Trend.of(days, IntStream.of(chosen).mapToDouble(i -> samples[i]).toArray()))
        : Optional.empty();
  }

  private double days(int index) {
    return (millis(index) - millis(0)) / MS_PER_DAY;
  }

  private double millis(int index) {
    return trusted.get(index).at().toInstant().toEpochMilli();
  }

  History history() {
    Segment last = segments.get(segments.size() - 1);
    return new History(rate, points(), steps(), last.level(samples), drift(last));
  }

  private List<HistoryPoint> points() {
    List<HistoryPoint> points = new ArrayList<>();
    int index = 0;
    for (Heading heading : headings) {
      points.add(
          heading.delay().isPresent()
              ? new HistoryPoint(heading, OptionalDouble.of(samples[index]), mark(index++))
              : new HistoryPoint(heading, OptionalDouble.empty(), HistoryPoint.Mark.NO_NUMBER));
    }
    return points;
  }

  private HistoryPoint.Mark mark(int index) {
    boolean first = segments.stream().skip(1).anyMatch(segment -> segment.from() == index);
    if (first) {
      return HistoryPoint.Mark.STEP;
    }
    return outlier[index] ? HistoryPoint.Mark.OUTLIER : HistoryPoint.Mark.USUAL;
  }

  private List<History.Step> steps() {
    List<History.Step> steps = new ArrayList<>();
    for (int i = 1; i < segments.size(); i++) {
      Segment before = segments.get(i - 1);
      Segment after = segments.get(i);
      steps.add(
          new History.Step(
              trusted.get(lastUsual(before)),
              trusted.get(after.from()),
              after.level(samples) - before.level(samples)));
    }
    return steps;
  }

  private int lastUsual(Segment segment) {
    return IntStream.range(segment.from(), segment.to())
        .filter(i -> !outlier[i])
        .max()
        .orElse(segment.to() - 1);
  }

  private Optional<DelayTrend> drift(Segment segment) {
    int[] kept = IntStream.range(segment.from(), segment.to()).filter(i -> !outlier[i]).toArray();
    if (kept.length < Trend.FEWEST || days(kept[0]) >= days(kept[kept.length - 1])) {
      return Optional.empty();
    }
    return Optional.of(
        DelayTrend.of(
            IntStream.of(kept).mapToDouble(this::days).toArray(),
            IntStream.of(kept).mapToDouble(i -> samples[i]).toArray()));
  }
}
