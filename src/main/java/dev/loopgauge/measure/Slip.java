package dev.loopgauge.measure;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.estimate.Finding;
import dev.loopgauge.estimate.FindingCode;
import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.estimate.Reading;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Finds out whether the delay changed from one repeat to the next. */
final class Slip {
  /** Lost or repeated sound moves the delay by whole samples; half of one is no chance. */
  private static final double LEAST_SAMPLES = 0.5;

  private Slip() {}

  /**
   * Why the readings are not of one delay; empty when they are, or can't be told apart. Readings
   * too faint to be read by themselves say nothing.
   */
  static Optional<Finding> between(List<Reading> readings, DelayEstimator estimator) {
    if (readings.size() < 2) {
      return Optional.empty();
    }
    List<Measurement> each =
        readings.stream()
            .map(reading -> estimator.estimate(List.of(reading)))
            .flatMap(Slip::measurement)
            .toList();
    boolean slipped =
        each.stream().anyMatch(one -> each.stream().anyMatch(other -> differ(one, other)));
    return slipped ? Optional.of(finding(each)) : Optional.empty();
  }

  private static Stream<Measurement> measurement(Estimate estimate) {
    return estimate instanceof Estimate.Found found
        ? Stream.of(found.measurement())
        : Stream.empty();
  }

  /** Twice the expanded uncertainty of the difference: four standard deviations. */
  private static boolean differ(Measurement one, Measurement other) {
    double difference = Math.abs(one.delay().minus(other.delay()).samples());
    double uncertainty = Math.hypot(one.uncertaintySamples(), other.uncertaintySamples());
    return difference > Math.max(LEAST_SAMPLES, 2 * uncertainty);
  }

  private static Finding finding(List<Measurement> each) {
    String delays =
        each.stream()
            .map(one -> String.format(Locale.ROOT, "%.1f", one.delay().samples()))
            .collect(Collectors.joining(", "));
    return new Finding(
        FindingCode.DROPOUT,
        true,
        "the delay changed while measuring: the repeats read " + delays + " samples",
        "sound was lost on the way, or two clocks are not locked: check the host's load and the"
            + " word clock, then measure again");
  }
}
