package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.verify.verdict.Judgement;
import java.util.Optional;

/** A path of a round and its measurement. */
public record RoundPathRecord(
    String path, Optional<Judgement> standing, MeasurementDocument document) {
  /** Of a measurement. */
  public static RoundPathRecord of(String path, MeasurementDocument document) {
    return new RoundPathRecord(path, document.verdict().flatMap(VerdictRecord::standing), document);
  }

  /** Whether it stands so. */
  boolean stands(Judgement judgement) {
    return standing.equals(Optional.of(judgement));
  }
}
