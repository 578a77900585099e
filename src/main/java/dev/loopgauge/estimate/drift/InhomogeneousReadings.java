package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.path.Uncertainty;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.reading.Resampled;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Step;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.Samples;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * What several readings say that don't show one delay: a drift, where they lie on a line; groups,
 * where some agree; nothing, where none do. A mean that no reading had is never given.
 */
public final class InhomogeneousReadings {
  /** No clock is this far off, in ppm; 48 against 44.1 kHz is 88,435. */
  static final double WORST_CLOCK_PPM = 100_000;

  private final Function<Reading, Estimate> estimator;

  /**
   * The way out of an inhomogeneity.
   *
   * @param estimator what tells the delay of a reading by itself
   */
  public InhomogeneousReadings(Function<Reading, Estimate> estimator) {
    this.estimator = estimator;
  }

  /** The estimate from readings that disagree. */
  public Estimate estimate(List<Reading> readings) {
    List<Estimate.Found> found = new ArrayList<>();
    Optional<Estimate> refusal = estimateEach(readings, found);
    if (refusal.isPresent()) {
      return refusal.get();
    }
    double[] times = readings.stream().mapToDouble(Reading::start).toArray();
    if (times.length > 2 && times[times.length - 1] > times[0]) {
      double slope = line(times, found).slope().value();
      if (Math.abs(slope) * 1e6 < WORST_CLOCK_PPM) {
        List<Estimate.Found> still = new ArrayList<>();
        boolean whole = estimateEach(still(readings, found, slope), still).isEmpty();
        List<Estimate.Found> clearer = whole && clarity(still) > clarity(found) ? still : found;
        if (line(times, clearer).drifts()) {
          return drift(clearer, times);
        }
      }
    }
    return groups(found, delays(found));
  }

  private static DelayLine line(double[] times, List<Estimate.Found> found) {
    double[] noise =
        found.stream()
            .mapToDouble(f -> f.measurement().uncertaintySamples() / Measurement.COVERAGE_FACTOR)
            .toArray();
    return DelayLine.through(times, delays(found), noise);
  }

  /** Estimates each reading by itself; gives back the first that is refused. */
  private Optional<Estimate> estimateEach(List<Reading> readings, List<Estimate.Found> found) {
    for (Reading reading : readings) {
      Estimate estimate = estimator.apply(reading);
      if (!(estimate instanceof Estimate.Found one)) {
        return Optional.of(estimate);
      }
      found.add(one);
    }
    return Optional.empty();
  }

  private static double clarity(List<Estimate.Found> found) {
    return found.stream().mapToDouble(f -> f.measurement().signalToNoiseDb()).sum();
  }

  private static double[] delays(List<Estimate.Found> found) {
    return found.stream().mapToDouble(f -> f.measurement().delay().samples()).toArray();
  }

  /** Readings that a drift smears, each with the drift taken out about its own middle. */
  private static List<Reading> still(
      List<Reading> readings, List<Estimate.Found> found, double slope) {
    List<Reading> still = new ArrayList<>();
    for (int i = 0; i < readings.size(); i++) {
      Reading reading = readings.get(i);
      double delay = found.get(i).measurement().delay().samples();
      double middle = delay + reading.reference().length() / 2.0;
      Samples steady = new Resampled(reading.ret(), middle, slope);
      still.add(new Reading(reading.reference(), steady, reading.start()));
    }
    return still;
  }

  private static Estimate drift(List<Estimate.Found> found, double[] times) {
    DelayLine line = line(times, found);
    double moved = Math.abs(line.slope().value()) * (times[times.length - 1] - times[0]);
    Estimate.Found middle = found.get(found.size() / 2);
    double uncertainty =
        new Uncertainty()
            .with(middle.measurement().uncertaintySamples() / Measurement.COVERAGE_FACTOR)
            .with(moved / Math.sqrt(12))
            .expanded();
    Measurement m = middle.measurement();
    List<Finding> findings = new ArrayList<>(middle.findings());
    findings.add(DriftFindings.drifting(line.drift()));
    return new Estimate.Found(
        m.ofReadings(
            found.size(),
            new Latency(line.middle(), m.delay().rate()),
            uncertainty,
            Optional.of(line.drift()),
            m.ambiguous()),
        findings);
  }

  /**
   * Where a path delays frequencies differently, readings whose correlations peak apart may each
   * tell one delay: they are one group, which needs no finding.
   */
  private static Estimate groups(List<Estimate.Found> found, double[] delays) {
    Map<Double, Integer> groups = new TreeMap<>();
    for (double delay : delays) {
      double key =
          groups.keySet().stream()
              .filter(k -> Math.abs(k - delay) < Step.LEAST_SAMPLES)
              .findFirst()
              .orElse(delay);
      groups.merge(key, 1, Integer::sum);
    }
    Map.Entry<Double, Integer> largest =
        groups.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow();
    if (largest.getValue() < 2) {
      return new Estimate.Refused(
          List.of(DriftFindings.disagree(groups.keySet().stream().toList())));
    }
    Estimate.Found one =
        found.stream()
            .filter(f -> f.measurement().delay().samples() == largest.getKey())
            .findFirst()
            .orElseThrow();
    List<Finding> findings = new ArrayList<>(one.findings());
    boolean apart = groups.size() > 1;
    if (apart) {
      findings.add(DriftFindings.groups(groups));
    }
    Measurement m = one.measurement();
    double spread = apart ? 0 : range(delays) / Math.sqrt(12);
    double uncertainty = Math.hypot(m.uncertaintySamples(), Measurement.COVERAGE_FACTOR * spread);
    return new Estimate.Found(
        m.ofReadings(delays.length, m.delay(), uncertainty, Optional.empty(), apart), findings);
  }

  private static double range(double[] delays) {
    DoubleSummaryStatistics all = Arrays.stream(delays).summaryStatistics();
    return all.getMax() - all.getMin();
  }
}
