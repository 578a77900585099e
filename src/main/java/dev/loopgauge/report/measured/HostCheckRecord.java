package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.ReportedDelay;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * Whether a reported delay is true, as documents hold it.
 *
 * @param text what was found, in words
 */
public record HostCheckRecord(
    Optional<BigDecimal> reportedSamples,
    Optional<BigDecimal> measuredSamples,
    Optional<BigDecimal> differenceSamples,
    Optional<BigDecimal> uncertaintySamples,
    Optional<Boolean> agrees,
    Optional<String> text) {
  private static final int SHOWN_DECIMALS = 3;

  /** Of a host check, where there is one. */
  static Optional<HostCheckRecord> of(Optional<HostCheck> check) {
    return check.isPresent() ? Optional.of(of(check.get())) : Optional.empty();
  }

  /** Of a host check. */
  static HostCheckRecord of(HostCheck check) {
    double uncertainty = check.uncertaintySamples();
    return new HostCheckRecord(
        check.reported().map(ReportedDelay::samples).map(Written::samples),
        Optional.of(Written.samples(check.measuredSamples(), uncertainty)),
        check.differenceSamples().map(difference -> Written.samples(difference, uncertainty)),
        Optional.of(Written.uncertainSamples(uncertainty)),
        check.agrees(),
        Optional.of(text(check)));
  }

  /** Whether a delay is reported that isn't true. */
  public boolean fails() {
    return reportedSamples.isPresent() && !agrees.orElse(false);
  }

  private static String text(HostCheck check) {
    String adds = adds(check);
    String reports = check.reported().map(r -> Numbers.brief(r.samples(), 2)).orElse("none");
    return switch (check.answer()) {
      case AGREES -> "adds %s samples and reports %s: they agree".formatted(adds, reports);
      case NO_DELAY ->
          "0 samples in, 0 out (measured %s): it adds no delay, or its host takes back all it adds"
              .formatted(adds);
      case TAKEN_BACK ->
          "reports %s samples, but %s are measured: the host compensates, or the plug-in is not active"
              .formatted(reports, adds);
      case TWICE ->
          "adds %s samples, twice the %s that it reports: inserted twice, or compensated twice"
              .formatted(adds, reports);
      case TAKEN_BACK_IN_VAIN ->
          "adds %s samples: the host takes back the %s that are reported, but they aren't there"
              .formatted(adds, reports);
      case NOT_REPORTED ->
          "adds %s samples and reports none: the host can't compensate what it isn't told"
              .formatted(adds);
      case MORE_THAN_REPORTED ->
          "adds %s samples and reports %s: the host can't compensate the other %s"
              .formatted(adds, reports, off(check));
      case LESS_THAN_REPORTED ->
          "adds %s samples and reports %s: a host that compensates pads the others by %s too many"
              .formatted(adds, reports, off(check));
      case UNASKED -> "adds %s samples".formatted(adds);
      case UNDECIDED ->
          "can't be checked: the sound card's own delay is in the reading of %s samples"
              .formatted(bare(check));
    };
  }

  private static String adds(HostCheck check) {
    return Numbers.plusMinus(check.measuredSamples(), check.uncertaintySamples(), SHOWN_DECIMALS);
  }

  private static String bare(HostCheck check) {
    int decimals = Numbers.decimalsFor(check.uncertaintySamples(), SHOWN_DECIMALS);
    return Numbers.plain(check.measuredSamples(), decimals);
  }

  private static String off(HostCheck check) {
    int decimals = Numbers.decimalsFor(check.uncertaintySamples(), 1);
    Optional<Double> off = check.differenceSamples();
    return Numbers.brief(Math.abs(off.orElse(0.0)), decimals);
  }
}
