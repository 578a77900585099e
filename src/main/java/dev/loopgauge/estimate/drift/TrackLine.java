package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.integrity.IntegrityFindings;
import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Step;
import dev.loopgauge.estimate.result.Track;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.stats.ChangePoints;
import dev.loopgauge.stats.Median;
import dev.loopgauge.stats.RobustScatter;
import dev.loopgauge.stats.Segment;
import dev.loopgauge.stats.Slope;
import dev.loopgauge.stats.StraightLine;
import dev.loopgauge.stats.Trend;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Tells what the delays of a track have in common: one drift, and between steps one offset each.
 *
 * <p>The median of the changes from window to window gives the drift at first. With it taken out,
 * {@link ChangePoints} finds the steps; one window that stands out is none. Then the line is fitted
 * once more, by least squares with an offset for each segment between steps.
 *
 * <p>In that fit windows count by their own noise, or by the jitter they share where that is more.
 * Few windows don't tell it, and count alike; of more, outliers are left out.
 */
public final class TrackLine {
  /** How many windows on either side show what is usual. */
  private static final int BESIDE = 2;

  private static final int FEWEST = 3;

  /** With fewer windows, a single step would count as scatter, and jitter as an outlier. */
  private static final int FEWEST_TO_SCATTER = 6;

  private final double windowSeconds;
  private final List<TrackPoint> points;
  private final double perSample;
  private final double[] times;
  private final double[] delays;
  private final double[] noise;
  private final double[] spread;
  private final boolean[] outliers;
  private final double roughSlope;

  /** The line through some points. */
  public TrackLine(double windowSeconds, List<TrackPoint> points) {
    this.windowSeconds = windowSeconds;
    this.points = points;
    this.perSample = points.isEmpty() ? 1 : 1.0 / points.get(0).delay().rate().hertz();
    this.times = points.stream().mapToDouble(TrackPoint::atSeconds).toArray();
    this.delays = points.stream().mapToDouble(p -> p.delay().samples()).toArray();
    this.noise = points.stream().mapToDouble(TrackLine::noise).toArray();
    this.roughSlope = points.size() < FEWEST ? 0 : Trend.betweenNeighbours(times, delays);
    double[] levels = levels(roughSlope);
    double scatter = canScatter() ? widening(points.size()) * RobustScatter.fromMoves(levels) : 0;
    this.spread = Arrays.stream(noise).map(own -> Math.max(own, scatter)).toArray();
    this.outliers = new boolean[points.size()];
    for (int i = 0; i < outliers.length; i++) {
      outliers[i] = canScatter() && standsOut(levels, i);
    }
  }

  /** At least what arithmetic of 32 bits leaves of a delay. */
  private static double noise(TrackPoint point) {
    double rounding = Math.ulp((float) point.delay().samples());
    return Math.max(rounding, point.uncertaintySamples() / Measurement.COVERAGE_FACTOR);
  }

  /**
   * By how much a robust scatter of few values is widened (P. J. Rousseeuw and A. M. Leroy, "Robust
   * Regression and Outlier Detection", 1987, chapter 5, from memory).
   */
  private static double widening(int count) {
    return 1 + 5.0 / (count - 2);
  }

  private boolean canScatter() {
    return points.size() >= FEWEST_TO_SCATTER;
  }

  /** The drift in samples a second, where it is beyond doubt and there is no step. */
  Optional<Slope> steadyDrift() {
    List<Segment> segments = segments(roughSlope);
    return points.size() < FEWEST || segments.size() > 1
        ? Optional.empty()
        : Optional.of(slope(segments)).filter(slope -> drifts(slope, segments));
  }

  /** Few windows with a step among them can't tell a drift from jitter that looks like steps. */
  private boolean drifts(Slope perSecond, List<Segment> segments) {
    Slope slope = perSecond.times(perSample);
    if (segments.size() == 1 && IntStream.range(0, outliers.length).noneMatch(i -> outliers[i])) {
      return ClockDrift.isThere(slope);
    }
    return canScatter() && ClockDrift.isThereAmongSelected(slope);
  }

  /**
   * The whole track.
   *
   * @param leftOut how many windows have no point
   * @param clipped in how many windows the return is clipped
   */
  public Track track(int leftOut, int clipped) {
    if (points.isEmpty()) {
      Finding why =
          clipped > 0
              ? IntegrityFindings.clippedWindows(clipped, true)
              : DriftFindings.noWindow(windowSeconds);
      return new Track(windowSeconds, points, leftOut, Optional.empty(), List.of(), List.of(why));
    }
    List<Segment> segments = segments(slope(segments(roughSlope)).value());
    Slope slope = slope(segments);
    Optional<ClockDrift> drift =
        slope.degrees() == 0
            ? Optional.empty()
            : Optional.of(ClockDrift.of(slope.times(perSample)));
    List<Step> steps = steps(segments, slope.value());
    List<Finding> findings = new ArrayList<>();
    if (!steps.isEmpty()) {
      findings.add(DriftFindings.stepped(steps));
    }
    drift
        .filter(d -> drifts(slope, segments))
        .map(DriftFindings::drifting)
        .ifPresent(findings::add);
    if (clipped > 0) {
      findings.add(IntegrityFindings.clippedWindows(clipped, false));
    }
    return new Track(windowSeconds, points, leftOut, drift, steps, findings);
  }

  /** The delays with a drift taken out. */
  private double[] levels(double slope) {
    double[] levels = new double[points.size()];
    Arrays.setAll(levels, i -> delays[i] - slope * times[i]);
    return levels;
  }

  private List<Segment> segments(double slope) {
    return new ChangePoints(Step.LEAST_SAMPLES, 0).segments(levels(slope), spread);
  }

  /** Whether a window lies off its neighbours on either side: it says nothing of the line. */
  private boolean standsOut(double[] levels, int i) {
    double usual =
        Median.of(levels, Math.max(0, i - BESIDE), Math.min(levels.length, i + BESIDE + 1));
    return Math.abs(levels[i] - usual)
        > Math.max(Step.LEAST_SAMPLES, ChangePoints.LIMIT * spread[i]);
  }

  private Slope slope(List<Segment> segments) {
    return Slope.of(segments.stream().map(this::line).toList());
  }

  /** The line through a segment's windows that count, or through all of them if none does. */
  private StraightLine line(Segment segment) {
    int[] all = IntStream.range(segment.from(), segment.to()).toArray();
    int[] counting = IntStream.of(all).filter(i -> !outliers[i]).toArray();
    int[] used = counting.length == 0 ? all : counting;
    double[] x = of(times, used);
    double[] y = of(delays, used);
    return canScatter()
        ? StraightLine.byNoise(x, y, of(spread, used))
        : StraightLine.even(x, y, of(noise, used));
  }

  private static double[] of(double[] values, int[] places) {
    return IntStream.of(places).mapToDouble(i -> values[i]).toArray();
  }

  private List<Step> steps(List<Segment> segments, double slope) {
    List<Step> steps = new ArrayList<>();
    for (int s = 1; s < segments.size(); s++) {
      int first = segments.get(s).from();
      double at = (times[first - 1] + times[first]) / 2;
      StraightLine before = line(segments.get(s - 1));
      StraightLine after = line(segments.get(s));
      steps.add(new Step(at, level(before, slope, at), level(after, slope, at)));
    }
    return steps;
  }

  private static double level(StraightLine segment, double slope, double at) {
    return segment.middleY() + slope * (at - segment.middleX());
  }
}
