package dev.loopgauge.estimate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Tells what the delays of a track have in common: one drift, and between steps one offset each.
 *
 * <p>The median of the changes from window to window gives the drift at first, which few steps
 * don't disturb (P. K. Sen, "Estimates of the regression coefficient based on Kendall's tau", 1968,
 * from memory). A step is a jump off that line after which the delay stays where it went; one
 * window that stands out is none. Then the line is fitted once more, by least squares with an
 * offset for each stretch between steps.
 */
final class TrackLine {
  /** Jumps smaller than this are never steps, in samples. */
  private static final double LEAST_STEP = 0.5;

  /** How many windows on either side show where the delay stayed. */
  private static final int SIDE = 3;

  /** How many windows must follow a jump before it is a step. */
  private static final int STAYS = 2;

  private static final int FEWEST = 3;

  /** A drift smaller than this is none, in parts per million. */
  private static final double LEAST_PPM = 0.2;

  /** What a delay is off at least, however clean, in samples: keeps weights from running away. */
  private static final double FLOOR = 0.01;

  private final double windowSeconds;
  private final List<TrackPoint> points;
  private final double perSecondPerPpm;
  private final boolean[] outliers;

  /** The line through some points. */
  TrackLine(double windowSeconds, List<TrackPoint> points) {
    this.windowSeconds = windowSeconds;
    this.points = points;
    this.perSecondPerPpm = points.isEmpty() ? 1 : points.get(0).delay().rate().hertz() * 1e-6;
    this.outliers = new boolean[points.size()];
    double[] levels = levels(medianSlope());
    for (int i = 0; i < outliers.length; i++) {
      outliers[i] = standsOut(levels, i);
    }
  }

  /** The drift, where it is beyond doubt and there is no step. */
  OptionalDouble steadyDrift() {
    if (points.size() < FEWEST || segments(medianSlope()).size() > 1) {
      return OptionalDouble.empty();
    }
    Drift drift = drift(segments(medianSlope()));
    return drifts(drift) ? OptionalDouble.of(drift.slope()) : OptionalDouble.empty();
  }

  private boolean drifts(Drift drift) {
    return Math.abs(drift.slope()) > Math.max(4 * drift.deviation(), LEAST_PPM * perSecondPerPpm);
  }

  /** Where the delay stayed between steps: points {@code from} to before {@code to}. */
  private record Segment(int from, int to) {}

  /** A drift in samples a second, and its standard uncertainty. */
  private record Drift(double slope, double deviation) {}

  /**
   * The whole track.
   *
   * @param leftOut how many windows have no point
   * @param clipped how many of them because the return is clipped
   */
  Track track(int leftOut, int clipped) {
    if (points.isEmpty()) {
      Finding why =
          clipped > 0 ? Findings.clippedWindows(clipped, true) : Findings.noWindow(windowSeconds);
      return new Track(
          windowSeconds, points, leftOut, OptionalDouble.empty(), List.of(), List.of(why));
    }
    List<Segment> segments = segments(medianSlope());
    Drift drift = drift(segments);
    segments = segments(drift.slope());
    drift = drift(segments);
    double ppm = drift.slope() / perSecondPerPpm;
    List<Step> steps = steps(segments, drift.slope());
    List<Finding> findings = new ArrayList<>();
    if (!steps.isEmpty()) {
      findings.add(Findings.stepped(steps));
    }
    if (drifts(drift)) {
      findings.add(Findings.drifting(ppm));
    }
    if (clipped > 0) {
      findings.add(Findings.clippedWindows(clipped, false));
    }
    return new Track(
        windowSeconds,
        points,
        leftOut,
        points.size() < FEWEST ? OptionalDouble.empty() : OptionalDouble.of(ppm),
        steps,
        findings);
  }

  private double time(int i) {
    return points.get(i).atSeconds();
  }

  private double delay(int i) {
    return points.get(i).delay().samples();
  }

  private double weight(int i) {
    double standard = expanded(i) / Measurement.COVERAGE_FACTOR;
    return outliers[i] ? 0 : 1 / (standard * standard + FLOOR * FLOOR);
  }

  private double expanded(int i) {
    return points.get(i).uncertaintySamples();
  }

  /** The middle one of the changes between neighbours, the smaller of two middle ones. */
  private double medianSlope() {
    if (points.size() < FEWEST) {
      return 0;
    }
    double[] slopes = new double[points.size() - 1];
    Arrays.setAll(slopes, i -> (delay(i + 1) - delay(i)) / (time(i + 1) - time(i)));
    Arrays.sort(slopes);
    double low = slopes[(slopes.length - 1) / 2];
    double high = slopes[slopes.length / 2];
    return Math.abs(low) < Math.abs(high) ? low : high;
  }

  /** The delays with a drift taken out. */
  private double[] levels(double slope) {
    double[] levels = new double[points.size()];
    Arrays.setAll(levels, i -> delay(i) - slope * time(i));
    return levels;
  }

  private List<Segment> segments(double slope) {
    double[] levels = levels(slope);
    List<Segment> segments = new ArrayList<>();
    int from = 0;
    for (int i = 1; i + STAYS <= levels.length; i++) {
      if (steps(levels, i)) {
        segments.add(new Segment(from, i));
        from = i;
      }
    }
    segments.add(new Segment(from, levels.length));
    return segments;
  }

  /** Whether the levels from {@code i} on are others than those before. */
  private boolean steps(double[] levels, int i) {
    double limit = Math.max(LEAST_STEP, 2 * Math.hypot(expanded(i - 1), expanded(i)));
    double before = median(levels, Math.max(0, i - SIDE), i);
    double after = median(levels, i, Math.min(levels.length, i + SIDE));
    double jump = levels[i] - levels[i - 1];
    double change = after - before;
    return Math.abs(jump) > limit && Math.abs(change) > limit && jump * change > jump * jump / 2;
  }

  /** Whether a window lies off its neighbours on either side: it says nothing of the line. */
  private boolean standsOut(double[] levels, int i) {
    double usual = median(levels, Math.max(0, i - STAYS), Math.min(levels.length, i + STAYS + 1));
    return Math.abs(levels[i] - usual) > Math.max(LEAST_STEP, 2 * expanded(i));
  }

  private static double median(double[] values, int from, int to) {
    return Median.of(Arrays.copyOfRange(values, from, to));
  }

  private Drift drift(List<Segment> segments) {
    double spread = 0;
    double product = 0;
    for (Segment segment : segments) {
      double[] middle = middle(segment);
      for (int i = segment.from(); i < segment.to(); i++) {
        double since = time(i) - middle[0];
        spread += weight(i) * since * since;
        product += weight(i) * since * (delay(i) - middle[1]);
      }
    }
    if (spread == 0) {
      return new Drift(0, 0);
    }
    double slope = product / spread;
    return new Drift(slope, Math.sqrt(Math.max(1, scatter(segments, slope)) / spread));
  }

  /** The variance about the line against what the points' own uncertainties lead to expect. */
  private double scatter(List<Segment> segments, double slope) {
    double squares = 0;
    for (Segment segment : segments) {
      double[] middle = middle(segment);
      for (int i = segment.from(); i < segment.to(); i++) {
        double off = delay(i) - middle[1] - slope * (time(i) - middle[0]);
        squares += weight(i) * off * off;
      }
    }
    int free = points.size() - segments.size() - 1;
    return free > 0 ? squares / free : 1;
  }

  /** The weighted mean time and delay of a segment. */
  private double[] middle(Segment segment) {
    double sum = 0;
    double time = 0;
    double delay = 0;
    for (int i = segment.from(); i < segment.to(); i++) {
      sum += weight(i);
      time += weight(i) * time(i);
      delay += weight(i) * delay(i);
    }
    return new double[] {time / sum, delay / sum};
  }

  private List<Step> steps(List<Segment> segments, double slope) {
    List<Step> steps = new ArrayList<>();
    for (int s = 1; s < segments.size(); s++) {
      int first = segments.get(s).from();
      double at = (time(first - 1) + time(first)) / 2;
      double[] before = middle(segments.get(s - 1));
      double[] after = middle(segments.get(s));
      steps.add(
          new Step(at, before[1] + slope * (at - before[0]), after[1] + slope * (at - after[0])));
    }
    return steps;
  }
}
