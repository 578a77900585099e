package dev.loopgauge.report.html;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.ErrorDocument;
import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.kind.Documents;
import dev.loopgauge.report.measured.ComparisonRecord;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.TrackDocument;
import dev.loopgauge.report.patch.PatchDocument;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One document that goes into a report.
 *
 * @param source where it is from, such as the file's name
 * @param json the document as a command printed it
 * @param document the same read; empty where it is none that can be
 * @param entry what the journal knows of it, where it is from there
 * @param round what a round knows of it, where it is from one
 */
public record ReadDocument(
    String source,
    Map<?, ?> json,
    Optional<Document> document,
    Optional<Entry> entry,
    Optional<InRound> round) {
  /**
   * The place of a document in a round.
   *
   * @param path the path that was measured
   * @param when the part of the show's day
   */
  public record InRound(String path, Optional<When> when) {}

  /** A document from a file. */
  public static ReadDocument ofFile(String source, Map<?, ?> json) {
    return new ReadDocument(source, json, Documents.read(json), Optional.empty(), Optional.empty());
  }

  /** A path's document from the file of a round. */
  public static ReadDocument ofRound(String source, Map<?, ?> json, InRound round) {
    return new ReadDocument(
        source, json, Documents.read(json), Optional.empty(), Optional.of(round));
  }

  /** An entry of the journal with its document read. */
  public static ReadDocument ofEntry(Entry entry, Map<?, ?> json) {
    return new ReadDocument(
        "journal entry " + entry.heading().shortId(),
        json,
        Documents.read(json),
        Optional.of(entry),
        Optional.empty());
  }

  /** The document, where it is of a kind. */
  <T> Optional<T> as(Class<T> kind) {
    return document.filter(kind::isInstance).map(kind::cast);
  }

  /** The measurement of one return, trusted or not. */
  Optional<MeasurementDocument> measured() {
    return as(MeasurementDocument.class);
  }

  /** The trusted number, where there is one. */
  Optional<ShownDelay> delay() {
    return measured().flatMap(MeasurementDocument::delay);
  }

  /** How it stands against its budget. */
  Optional<ComparisonRecord> comparison() {
    return measured().flatMap(MeasurementDocument::comparison);
  }

  /** What a person must know. */
  List<FindingRecord> findings() {
    return measured().map(MeasurementDocument::findings).orElse(List.of());
  }

  /** The command that made it. */
  String command() {
    return Documents.command(json);
  }

  /** What it came to, by the name that documents use. */
  String outcome() {
    return Documents.outcome(json);
  }

  /** The part of the show's day it belongs to. */
  Optional<When> when() {
    return entry.map(logged -> logged.heading().when()).or(() -> round.flatMap(InRound::when));
  }

  /** The path that was measured; where none was named, where the document is from. */
  String path() {
    return entry
        .flatMap(logged -> logged.heading().path())
        .or(() -> round.map(InRound::path))
        .or(() -> comparison().flatMap(ComparisonRecord::path))
        .or(() -> as(TrackDocument.class).flatMap(t -> t.comparison()).flatMap(c -> c.path()))
        .orElse(source);
  }

  /** Whether a report has a place for it. */
  public boolean isShown() {
    return document.filter(read -> !(read instanceof PatchDocument)).isPresent();
  }

  /** Whether it is a measurement of one return, trusted or not, or one that failed. */
  boolean measures() {
    boolean failed = as(ErrorDocument.class).isPresent() && Documents.measures(command());
    return measured().isPresent() || failed;
  }
}
