package dev.loopgauge.report.kind;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Unbinder;
import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.SoakDocument;
import dev.loopgauge.verify.verdict.Judgement;
import java.util.Map;
import java.util.Optional;

/**
 * What an entry of the journal is listed and compared by, as its document tells it.
 *
 * @param outcome what the delay came to
 * @param standing how everything that was heard stands, where the document says so
 * @param delay the delay, where there is one that can be trusted
 */
public record KeptFacts(String outcome, Optional<Judgement> standing, Optional<ShownDelay> delay) {
  /** What is kept of any document beside its delay. */
  private record Judged(Optional<VerdictRecord> verdict) {}

  /** Of a document. */
  public static KeptFacts of(Document document) {
    return of(document, document.json());
  }

  /** Of a document that was read from these keys. */
  public static KeptFacts of(Document document, Map<?, ?> keys) {
    return new KeptFacts(
        Documents.outcome(keys),
        Unbinder.read(Judged.class, keys).flatMap(Judged::verdict).flatMap(VerdictRecord::standing),
        delayOf(document));
  }

  private static Optional<ShownDelay> delayOf(Document document) {
    if (document instanceof MeasurementDocument measured) {
      return measured.delay();
    }
    return document instanceof SoakDocument soak ? soak.delay() : Optional.empty();
  }
}
