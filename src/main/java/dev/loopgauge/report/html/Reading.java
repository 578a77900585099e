package dev.loopgauge.report.html;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Fields;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One document that goes into a report.
 *
 * @param source where it is from, such as the file's name
 * @param document the document as a command printed it
 * @param entry what the journal knows of it, where it is from there
 */
public record Reading(String source, Map<?, ?> document, Optional<Entry> entry) {
  /** The keys that tell the kinds of documents apart, but for a measurement's. */
  private static final List<String> SHOWN =
      List.of("fit", "track", "soak", "channels", "pairs", "choices", "conflicts", "paths");

  private static final List<String> MEASURING = List.of("measure", "host", "analyze");

  /** A document from a file. */
  public static Reading ofFile(String source, Map<?, ?> document) {
    return new Reading(source, document, Optional.empty());
  }

  /** An entry of the journal with its document read. */
  public static Reading ofEntry(Entry entry, Map<?, ?> document) {
    return new Reading("journal entry " + entry.heading().shortId(), document, Optional.of(entry));
  }

  /** The document by its keys. */
  Fields fields() {
    return new Fields(document);
  }

  /** The trusted number, where there is one. */
  Optional<Delay> delay() {
    return fields().part("measurement").flatMap(Delay::of);
  }

  /** What it came to, by the name that documents use. */
  String outcome() {
    return fields().text("outcome").orElse("unknown");
  }

  /** The part of the show's day it belongs to. */
  Optional<When> when() {
    return entry.map(logged -> logged.heading().when());
  }

  /** The path that was measured; where none was named, where the document is from. */
  String path() {
    return entry
        .flatMap(logged -> logged.heading().path())
        .or(() -> fields().part("comparison").flatMap(compared -> compared.text("path")))
        .orElse(source);
  }

  /** Whether a report has a place for it. */
  public boolean isShown() {
    return measures() || outcome().equals("error") || SHOWN.stream().anyMatch(fields()::has);
  }

  /** Whether it is a measurement of one return, trusted or not. */
  boolean measures() {
    boolean failed =
        outcome().equals("error") && MEASURING.contains(fields().text("command").orElse(""));
    return fields().has("measurement") || failed;
  }
}
