package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.verify.verdict.Judgement;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Optional;
import java.util.UUID;

/**
 * What an entry is listed by, as documents hold it.
 *
 * @param at when it was measured, as ISO 8601 writes it, with the offset there
 * @param zone the time zone there
 * @param standing how everything that was heard stands; null where the entry doesn't say
 * @param delaySamples the number at its own rate; null with rate and uncertainty where it could not
 *     be trusted
 * @param corrects the entry that this one replaces
 */
public record ListedRecord(
    String id,
    String at,
    String zone,
    String show,
    When when,
    Optional<String> path,
    String outcome,
    Optional<Judgement> standing,
    Optional<Integer> sampleRateHz,
    Optional<BigDecimal> delaySamples,
    Optional<BigDecimal> delayMs,
    Optional<BigDecimal> uncertaintySamples,
    Optional<String> corrects) {
  /**
   * Checks the id and the time.
   *
   * @throws java.time.DateTimeException when time or zone can't be read
   * @throws IllegalArgumentException when the id can't be read
   */
  public ListedRecord {
    time(at, zone);
    UUID.fromString(id);
  }

  /** Of an entry. */
  static ListedRecord of(Heading heading) {
    Optional<LoggedDelay> delay = heading.delay();
    return new ListedRecord(
        heading.id().toString(),
        heading.at().toOffsetDateTime().toString(),
        heading.at().getZone().getId(),
        heading.show(),
        heading.when(),
        heading.path(),
        heading.outcome(),
        heading.standing(),
        delay.map(logged -> logged.delay().rate().hertz()),
        delay.map(l -> Written.samples(l.delay().samples(), l.uncertaintySamples())),
        delay.map(ListedRecord::ms),
        delay.map(logged -> Written.uncertainSamples(logged.uncertaintySamples())),
        heading.corrects().map(UUID::toString));
  }

  private static BigDecimal ms(LoggedDelay logged) {
    double uncertainty = logged.uncertaintySamples() * 1000 / logged.delay().rate().hertz();
    return Written.ms(logged.delay().ms(), uncertainty);
  }

  private static ZonedDateTime time(String at, String zone) {
    return ZonedDateTime.ofInstant(OffsetDateTime.parse(at).toInstant(), ZoneId.of(zone));
  }

  /** When it was measured. */
  ZonedDateTime time() {
    return time(at, zone);
  }

  /** The number, where it could be trusted. */
  Optional<ShownDelay> delay() {
    return sampleRateHz.flatMap(
        rate ->
            delaySamples.flatMap(
                samples -> uncertaintySamples.map(uncertain -> shown(samples, uncertain, rate))));
  }

  private static ShownDelay shown(BigDecimal samples, BigDecimal uncertainty, int rate) {
    return new ShownDelay(samples.doubleValue(), uncertainty.doubleValue(), rate);
  }

  /** Enough of the id to be typed. */
  String shortId() {
    return shortened(id);
  }

  /** Enough of an id to be typed. */
  static String shortened(String id) {
    return Heading.shortened(UUID.fromString(id));
  }

  /** The name of the path, cut to this many characters. */
  String path(int most) {
    return path.map(name -> OneLine.brief(name, most)).orElse("-");
  }
}
