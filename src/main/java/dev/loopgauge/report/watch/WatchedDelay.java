package dev.loopgauge.report.watch;

import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;

/**
 * A delay that was read while it was watched, by the keys of a measurement. All are there or none.
 */
public record WatchedDelay(
    Optional<Integer> sampleRateHz,
    Optional<BigDecimal> delaySamples,
    Optional<BigDecimal> delayMs,
    Optional<BigDecimal> uncertaintySamples,
    Optional<BigDecimal> uncertaintyMs,
    Optional<Integer> coverageFactor,
    Optional<Polarity> polarity,
    Optional<BigDecimal> levelDb)
    implements Sparse {
  /** Nothing was read. */
  public static final WatchedDelay NONE =
      new WatchedDelay(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  /** What was read. */
  public static WatchedDelay of(FollowedDelay read) {
    TrackPoint point = read.point();
    double hertz = point.delay().rate().hertz();
    double uncertainMs = 1000 * point.uncertaintySamples() / hertz;
    return new WatchedDelay(
        Optional.of(point.delay().rate().hertz()),
        Optional.of(Written.samples(point.delay().samples(), point.uncertaintySamples())),
        Optional.of(Written.ms(point.delay().ms(), uncertainMs)),
        Optional.of(Written.uncertainSamples(point.uncertaintySamples())),
        Optional.of(Written.uncertainMs(uncertainMs)),
        Optional.of(Measurement.COVERAGE_FACTOR),
        Optional.of(read.inverted() ? Polarity.INVERTED : Polarity.NORMAL),
        Optional.of(Written.db(read.levelDb())));
  }

  /** The delay as it is shown; empty where nothing was read. */
  public Optional<ShownDelay> shown() {
    return delaySamples.map(
        samples ->
            new ShownDelay(
                samples.doubleValue(),
                uncertaintySamples.orElseThrow().doubleValue(),
                sampleRateHz.orElseThrow()));
  }

  @Override
  public Set<String> leftOut() {
    return Set.of(
        "sampleRateHz",
        "delaySamples",
        "delayMs",
        "uncertaintySamples",
        "uncertaintyMs",
        "coverageFactor",
        "polarity",
        "levelDb");
  }
}
