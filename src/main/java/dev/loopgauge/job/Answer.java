package dev.loopgauge.job;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.MeasurementDocument;
import java.util.Optional;

/**
 * What a job came to.
 *
 * @param ending how it ended
 * @param document the result, to be shown as text, JSON or a page
 */
public record Answer(Ending ending, Document document) {
  /** All good. */
  public static Answer good(Document document) {
    return new Answer(Ending.GOOD, document);
  }

  /** Good, or outside a limit. */
  public static Answer inside(boolean isInside, Document document) {
    return new Answer(isInside ? Ending.GOOD : Ending.OUTSIDE, document);
  }

  /** A measurement, which ends as its verdict says. */
  public static Answer measured(MeasurementDocument document) {
    return new Answer(ending(document), document);
  }

  /** Several channels, which end as the worst of them. */
  public static Answer channels(ChannelsDocument document) {
    return new Answer(
        Ending.worst(document.channels().stream().map(c -> ending(document.alone(c))).toList()),
        document);
  }

  /** What a verdict over readings that can be trusted ends as. */
  public static Ending ending(Optional<VerdictRecord> verdict) {
    return verdict.isEmpty() || verdict.get().isGood() ? Ending.GOOD : Ending.OUTSIDE;
  }

  private static Ending ending(MeasurementDocument document) {
    return document.outcome() == Outcome.NOT_TRUSTWORTHY
        ? Ending.NOT_TRUSTWORTHY
        : ending(document.verdict());
  }
}
