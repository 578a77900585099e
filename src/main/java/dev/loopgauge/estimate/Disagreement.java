package dev.loopgauge.estimate;

import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * What several readings say that don't show one delay: a drift, where they lie on a line; groups,
 * where some agree; nothing, where none do. A mean that no reading had is never given.
 */
final class Disagreement {
  /** How far apart delays of one group may lie, in samples. */
  private static final double ONE_GROUP = 0.5;

  /** How far delays may lie off a straight line to be a drift, in samples. */
  private static final double ON_LINE = 0.5;

  /** No clock is this far off, in ppm; 48 against 44.1 kHz is 88,435. */
  private static final double WORST_CLOCK_PPM = 100_000;

  private final DelayEstimator estimator;

  /** The way out of a disagreement, estimating each reading by itself. */
  Disagreement(DelayEstimator estimator) {
    this.estimator = estimator;
  }

  /** The estimate from readings that disagree. */
  Estimate estimate(List<Reading> readings) {
    List<Estimate.Found> found = new ArrayList<>();
    for (Reading reading : readings) {
      Estimate estimate = estimator.oneOfSeveral(reading);
      if (!(estimate instanceof Estimate.Found one)) {
        return estimate;
      }
      found.add(one);
    }
    List<Measurement> measured = found.stream().map(Estimate.Found::measurement).toList();
    double[] times = readings.stream().mapToDouble(Reading::start).toArray();
    double[] delays = measured.stream().mapToDouble(m -> m.delay().samples()).toArray();
    if (times.length > 2 && times[times.length - 1] > times[0]) {
      DelayLine line = DelayLine.through(times, delays, 0);
      if (line.scatter() < ON_LINE && Math.abs(line.ppm()) < WORST_CLOCK_PPM) {
        return drift(found, line, Math.abs(line.slope()) * (times[times.length - 1] - times[0]));
      }
    }
    return groups(found, delays);
  }

  private static Estimate drift(List<Estimate.Found> found, DelayLine line, double moved) {
    Estimate.Found middle = found.get(found.size() / 2);
    double uncertainty =
        new Uncertainty()
            .with(middle.measurement().uncertaintySamples() / Measurement.COVERAGE_FACTOR)
            .with(moved / Math.sqrt(12))
            .expanded();
    Measurement m = middle.measurement();
    List<Finding> findings = new ArrayList<>(middle.findings());
    findings.add(Findings.drifting(line.ppm()));
    return new Estimate.Found(
        m.ofReadings(
            found.size(),
            new Latency(line.middle(), m.delay().rate()),
            uncertainty,
            OptionalDouble.of(line.ppm()),
            m.ambiguous()),
        findings);
  }

  private static Estimate groups(List<Estimate.Found> found, double[] delays) {
    Map<Double, Integer> groups = new TreeMap<>();
    for (double delay : delays) {
      double key =
          groups.keySet().stream()
              .filter(k -> Math.abs(k - delay) < ONE_GROUP)
              .findFirst()
              .orElse(delay);
      groups.merge(key, 1, Integer::sum);
    }
    Map.Entry<Double, Integer> largest =
        groups.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow();
    if (largest.getValue() < 2) {
      return new Estimate.Refused(List.of(Findings.disagree(groups.keySet().stream().toList())));
    }
    Estimate.Found one =
        found.stream()
            .filter(f -> f.measurement().delay().samples() == largest.getKey())
            .findFirst()
            .orElseThrow();
    List<Finding> findings = new ArrayList<>(one.findings());
    findings.add(Findings.groups(groups));
    Measurement m = one.measurement();
    return new Estimate.Found(
        m.ofReadings(
            delays.length, m.delay(), m.uncertaintySamples(), OptionalDouble.empty(), true),
        findings);
  }
}
