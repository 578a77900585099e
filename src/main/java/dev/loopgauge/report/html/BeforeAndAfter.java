package dev.loopgauge.report.html;

import dev.loopgauge.journal.AspectChange;
import dev.loopgauge.journal.AspectChanges;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.journal.PathPair;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.logged.AspectWords;
import dev.loopgauge.report.logged.KeptDocument;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.Shift;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * The same path before and after, compared as {@code journal compare} does.
 *
 * @param before the earlier reading
 * @param after the later one
 * @param pair both, as the journal compares them
 * @param changes what is not as it was
 */
record BeforeAndAfter(
    ReadDocument before, ReadDocument after, PathPair pair, List<AspectChange> changes) {
  /** Between two readings. */
  static BeforeAndAfter of(ReadDocument before, ReadDocument after) {
    PathPair pair =
        new PathPair(
            Optional.of(before.path()), Optional.of(heading(before)), Optional.of(heading(after)));
    return new BeforeAndAfter(
        before,
        after,
        pair,
        AspectChanges.between(
            pair,
            KeptDocument.of(before.json()).summary(),
            KeptDocument.of(after.json()).summary()));
  }

  /** What the journal lists of a reading; one from a file is listed as if it were kept. */
  private static Heading heading(ReadDocument reading) {
    return reading
        .entry()
        .map(entry -> entry.heading())
        .orElseGet(
            () ->
                new Heading(
                    UUID.nameUUIDFromBytes(reading.source().getBytes(StandardCharsets.UTF_8)),
                    Instant.EPOCH.atZone(ZoneOffset.UTC),
                    "files",
                    reading.when().orElse(When.DURING),
                    Optional.of(reading.path()),
                    reading.outcome(),
                    Optional.empty(),
                    reading.delay().map(BeforeAndAfter::logged),
                    Optional.empty()));
  }

  private static LoggedDelay logged(ShownDelay delay) {
    return new LoggedDelay(
        new Latency(delay.samples(), new SampleRate((int) delay.rateHz())),
        delay.uncertaintySamples());
  }

  /** Whether anything changed. */
  boolean changed() {
    return !changes.isEmpty();
  }

  /** Whether the two can be compared: the same, or changed. */
  boolean isCompared() {
    return changed() || pair.shift().isPresent();
  }

  /** What changed, a sentence or a question each: {@code delay: 64.00 samples (1.33 ms) later}. */
  List<String> inWords() {
    return changes.stream()
        .map(change -> AspectWords.name(change.aspect()) + ": " + AspectWords.of(change))
        .toList();
  }

  /** {@code +64.00 ± 0.06}; empty where a number is missing. */
  Optional<String> inSamples() {
    return pair.shift().map(s -> Numbers.signedPlusMinus(s.samples(), s.uncertaintySamples(), 3));
  }

  /** {@code +1.333 ± 0.002}; empty where a number is missing. */
  Optional<String> inMs() {
    return pair.later().flatMap(later -> pair.shift().map(shift -> inMs(later, shift)));
  }

  private static String inMs(Latency later, Shift shift) {
    double uncertainty = new Latency(shift.uncertaintySamples(), later.rate()).ms();
    return Numbers.signedPlusMinus(later.ms(), uncertainty, 4);
  }
}
