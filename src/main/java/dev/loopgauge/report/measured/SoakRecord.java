package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.measure.Soak;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * What happened in a soak, as documents hold it.
 *
 * @param endedBy why it ended before its time, if the sound failed
 * @param delaySamples the delay since the last jump
 */
public record SoakRecord(
    Optional<BigDecimal> askedMinutes,
    BigDecimal heardSeconds,
    Optional<String> endedBy,
    Optional<Integer> takes,
    Optional<Integer> dropouts,
    Optional<Integer> steps,
    Optional<Integer> unreadableTakes,
    Optional<Integer> failedTakes,
    Optional<BigDecimal> longestCleanSeconds,
    Optional<Integer> sampleRateHz,
    Optional<BigDecimal> delaySamples,
    Optional<BigDecimal> uncertaintySamples,
    Optional<String> method,
    Optional<BigDecimal> rangeSamples,
    Optional<MomentRecord> worst,
    List<MomentRecord> moments)
    implements Sparse {
  private static final int MOST_TOLD = 10;
  private static final int SECOND_DECIMALS = 3;
  private static final int MINUTE_DECIMALS = 4;

  /** Something that happened. */
  public record MomentRecord(
      Optional<String> kind,
      BigDecimal atSeconds,
      Optional<BigDecimal> movedSamples,
      Optional<String> text) {
    private static MomentRecord of(Soak.Moment moment) {
      return new MomentRecord(
          Optional.of(moment.kind().name().toLowerCase(Locale.ROOT)),
          Numbers.rounded(moment.atSeconds(), SECOND_DECIMALS),
          Optional.of(Written.samples(moment.movedSamples())),
          Optional.of(moment.text()));
    }

    private String told() {
      String moved =
          movedSamples
              .filter(samples -> samples.signum() != 0)
              .map(samples -> " by " + Numbers.signed(samples.doubleValue(), 2) + " samples")
              .orElse("");
      return "at " + time(atSeconds.doubleValue()) + ": " + text.orElse("") + moved;
    }
  }

  /** Of a soak. */
  static SoakRecord of(Soak soak, double askedMinutes, Optional<String> ended) {
    Optional<Measurement> level = soak.level();
    return new SoakRecord(
        Optional.of(Numbers.rounded(askedMinutes, MINUTE_DECIMALS)),
        Numbers.rounded(soak.seconds(), SECOND_DECIMALS),
        ended,
        Optional.of(soak.takes()),
        Optional.of(soak.count(Soak.Kind.DROPOUT)),
        Optional.of(soak.count(Soak.Kind.STEP)),
        Optional.of(soak.count(Soak.Kind.UNREADABLE)),
        Optional.of(soak.count(Soak.Kind.FAILED)),
        Optional.of(Numbers.rounded(soak.longestCleanSeconds(), SECOND_DECIMALS)),
        level.map(m -> m.delay().rate().hertz()),
        level.map(m -> Written.samples(m.delay().samples(), m.uncertaintySamples())),
        level.map(Measurement::uncertaintySamples).map(Written::uncertainSamples),
        level.map(m -> m.method().label()),
        Optional.of(Written.samples(soak.rangeSamples())),
        soak.worst().map(MomentRecord::of),
        soak.moments().stream().map(MomentRecord::of).toList());
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("sampleRateHz", "uncertaintySamples", "method");
  }

  /** The delay since the last jump, where one was read and its uncertainty is known. */
  Optional<ShownDelay> delay() {
    return delaySamples.flatMap(
        samples ->
            uncertaintySamples.flatMap(
                uncertainty ->
                    sampleRateHz.map(
                        rate ->
                            new ShownDelay(
                                samples.doubleValue(),
                                uncertainty.doubleValue(),
                                rate,
                                isUncalibrated()))));
  }

  /** Whether the sound card's own delay is in it. */
  boolean isUncalibrated() {
    return method.equals(Optional.of(Method.UNCALIBRATED.label()));
  }

  /** The delay and over what it ranged. */
  String told(ShownDelay delay) {
    String sure =
        delay.uncalibrated() ? "" : " ± " + Numbers.plainUp(delay.uncertaintySamples(), 2);
    return "%s%s samples, ranged over %s"
        .formatted(
            Numbers.plain(delay.samples(), 2),
            sure,
            rangeSamples.map(range -> Numbers.plain(range.doubleValue(), 2)).orElse("?"));
  }

  /** Tells what was counted and what happened when. */
  void tell(Sheet sheet) {
    sheet.row(
        "takes",
        takes.orElse(0)
            + (": " + dropouts.orElse(0) + " with sound lost, ")
            + (steps.orElse(0) + " with a jump, ")
            + (unreadableTakes.orElse(0) + " unreadable, " + failedTakes.orElse(0) + " failed"));
    longestCleanSeconds.ifPresent(
        longest -> sheet.row("clean for", time(longest.doubleValue()) + " in a row at most"));
    worst.ifPresent(moment -> sheet.row("worst", moment.told()));
    moments.stream().limit(MOST_TOLD).forEach(moment -> sheet.row("", moment.told()));
    if (oddTakes() > MOST_TOLD) {
      sheet.row("", "and " + (oddTakes() - MOST_TOLD) + " more; --json lists the first 100");
    }
  }

  /** Whether nothing happened up to the end. */
  boolean isClean() {
    return oddTakes() == 0 && endedBy.isEmpty();
  }

  /** In how many takes something happened. */
  int oddTakes() {
    return dropouts.orElse(0) + steps.orElse(0) + unreadableTakes.orElse(0) + failedTakes.orElse(0);
  }

  /** A time in the unit that suits it. */
  static String time(double seconds) {
    return seconds < 60
        ? Numbers.brief(seconds, 1) + " s"
        : Numbers.brief(seconds / 60, 1) + " min";
  }
}
