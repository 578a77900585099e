package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * What the edition of the delay's meaning that counts now changes in numbers of older ones.
 *
 * @param definition the edition that counts now
 * @param current how many entries with a number are of it already
 * @param moved how many of the entries read anew differ by more than both uncertainties
 * @param unread how many entries of older editions could not be read anew
 * @param entries the entries of older editions, in the order of time
 */
public record RereadDocument(
    String command,
    String outcome,
    String definition,
    int current,
    int moved,
    int unread,
    List<RereadRecord> entries)
    implements Document {
  private static final int PATH_COLUMNS = 20;

  /**
   * One entry.
   *
   * @param edition the edition of its number
   * @param delaySamples its number as it is kept
   * @param newDelaySamples what its recording reads now; null with the uncertainty, the difference
   *     and whether it moved where that could not be told
   * @param why why not; null where it could
   */
  public record RereadRecord(
      String id,
      When when,
      Optional<String> path,
      String edition,
      BigDecimal delaySamples,
      BigDecimal uncertaintySamples,
      Optional<BigDecimal> newDelaySamples,
      Optional<BigDecimal> newUncertaintySamples,
      Optional<BigDecimal> differenceSamples,
      Optional<Boolean> moved,
      Optional<String> why) {
    /** An entry whose recording was read anew. */
    public static RereadRecord read(Heading kept, String edition, LoggedDelay now) {
      LoggedDelay was = kept.delay().orElseThrow();
      double difference = now.at(was.delay().rate()).delay().minus(was.delay()).samples();
      double uncertainty = Math.hypot(was.uncertaintySamples(), now.uncertaintySamples());
      return new RereadRecord(
          kept.id().toString(),
          kept.when(),
          kept.path(),
          edition,
          samples(was),
          Written.uncertainSamples(was.uncertaintySamples()),
          Optional.of(samples(now)),
          Optional.of(Written.uncertainSamples(now.uncertaintySamples())),
          Optional.of(Written.samples(difference, uncertainty)),
          Optional.of(Math.abs(difference) > uncertainty),
          Optional.empty());
    }

    /** An entry that could not be read anew. */
    public static RereadRecord unread(Heading kept, String edition, String why) {
      LoggedDelay was = kept.delay().orElseThrow();
      return new RereadRecord(
          kept.id().toString(),
          kept.when(),
          kept.path(),
          edition,
          samples(was),
          Written.uncertainSamples(was.uncertaintySamples()),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.of(why));
    }

    private static BigDecimal samples(LoggedDelay delay) {
      return Written.samples(delay.delay().samples(), delay.uncertaintySamples());
    }

    private String was() {
      return shown(delaySamples, uncertaintySamples);
    }

    private String now() {
      return newDelaySamples
          .map(samples -> shown(samples, newUncertaintySamples.orElseThrow()))
          .orElse("-");
    }

    private static String shown(BigDecimal samples, BigDecimal uncertainty) {
      return Numbers.plain(samples.doubleValue(), Logs.decimals(uncertainty.doubleValue()));
    }

    private String told() {
      if (why.isPresent()) {
        return why.get();
      }
      double off = differenceSamples.orElseThrow().doubleValue();
      int decimals = Logs.decimals(newUncertaintySamples.orElseThrow().doubleValue());
      return moved.orElseThrow() ? "MOVES " + Numbers.signed(off, decimals) : "same";
    }
  }

  /** Of entries of older editions. */
  public static RereadDocument of(String definition, int current, List<RereadRecord> entries) {
    int moved = 0;
    int unread = 0;
    for (RereadRecord entry : entries) {
      moved += entry.moved().orElse(false) ? 1 : 0;
      unread += entry.why().isPresent() ? 1 : 0;
    }
    String outcome = moved > 0 ? "moved" : unread > 0 ? "unread" : "same";
    return new RereadDocument(
        "journal reread", outcome, definition, current, moved, unread, List.copyOf(entries));
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    if (entries.isEmpty()) {
      sheet.line(
          "Nothing to read anew: all %d numbers are of edition %s of what the delay means."
              .formatted(current, definition));
      return sheet.toString();
    }
    sheet.line(
        "By edition %s %d of %d older numbers move, %d could not be read anew."
            .formatted(definition, moved, entries.size(), unread));
    new Table<RereadRecord>()
        .words("id", entry -> ListedRecord.shortened(entry.id()))
        .words("when", entry -> entry.when().label())
        .words("path", entry -> entry.path().map(p -> OneLine.brief(p, PATH_COLUMNS)).orElse("-"))
        .figures("kept", RereadRecord::was)
        .figures("now", RereadRecord::now)
        .words("samples", RereadRecord::told)
        .tell(entries, sheet);
    return sheet.toString();
  }
}
