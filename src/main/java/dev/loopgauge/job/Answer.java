package dev.loopgauge.job;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.MeasurementDocument;

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

  /** A measurement, which ends as its outcome and its host check say. */
  public static Answer measured(MeasurementDocument document) {
    return new Answer(ending(document), document);
  }

  /** Several channels, which end as the worst of them. */
  public static Answer channels(ChannelsDocument document) {
    return new Answer(
        Ending.worst(document.channels().stream().map(c -> ending(document.alone(c))).toList()),
        document);
  }

  private static Ending ending(MeasurementDocument document) {
    return switch (document.outcome()) {
      case MEASURED, WITHIN_BUDGET -> document.failsHostCheck() ? Ending.OUTSIDE : Ending.GOOD;
      case OUTSIDE_BUDGET, UNDECIDED -> Ending.OUTSIDE;
      case NOT_TRUSTWORTHY -> Ending.NOT_TRUSTWORTHY;
    };
  }
}
