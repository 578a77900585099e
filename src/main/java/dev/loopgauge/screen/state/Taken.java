package dev.loopgauge.screen.state;

import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.job.Answer;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.measured.MeasurementDocument;
import java.time.ZonedDateTime;
import java.util.Optional;

/**
 * A reading that was taken.
 *
 * @param answer what the job came to
 * @param document the same as a measurement
 * @param at when it was over
 * @param chainText the chain file as it was
 * @param card what it was taken with
 * @param kept which part of the day it was kept as
 */
public record Taken(
    Answer answer,
    MeasurementDocument document,
    ZonedDateTime at,
    String chainText,
    Optional<SessionInfo> card,
    Optional<When> kept) {
  /** The same once it was kept. */
  public Taken keptAs(When when) {
    return new Taken(answer, document, at, chainText, card, Optional.of(when));
  }
}
