package dev.loopgauge.report.html;

import dev.loopgauge.report.form.ErrorDocument;
import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.report.form.VerdictRecord.AspectRecord;
import dev.loopgauge.report.measured.HostCheckRecord;
import dev.loopgauge.report.measured.MeasurementDocument;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a measurement came to, in the words of its document. */
final class Telling {
  private Telling() {}

  /** The verdict of a reading. */
  static String verdict(ReadDocument reading) {
    return reading
        .as(ErrorDocument.class)
        .map(error -> "No reading: " + error.error().text())
        .or(() -> reading.measured().map(Telling::line))
        .orElse("No trustworthy reading: the document doesn't say why.");
  }

  private static String line(MeasurementDocument document) {
    return document.line() + (document.verdict().isPresent() ? "" : host(document));
  }

  /** What documents without a verdict say of a reported delay. */
  private static String host(MeasurementDocument document) {
    return document
        .hostCheck()
        .flatMap(HostCheckRecord::text)
        .map(text -> " Host check: " + text + ".")
        .orElse("");
  }

  /** Names in a sentence. */
  static String listed(List<String> names) {
    return names.stream()
        .map(name -> Escaping.shortened(name, 80))
        .collect(Collectors.joining(", "));
  }

  /** The aspects that make a verdict what it is, in a sentence; empty where none has words. */
  static Optional<String> worst(VerdictRecord verdict) {
    String texts =
        verdict.aspects().stream()
            .filter(aspect -> aspect.standing().equals(verdict.standing()))
            .map(AspectRecord::text)
            .flatMap(Optional::stream)
            .collect(Collectors.joining("; "));
    return texts.isEmpty() ? Optional.empty() : Optional.of(texts + ".");
  }
}
