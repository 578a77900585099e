package dev.loopgauge.report.exchange;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.kind.Documents;
import dev.loopgauge.report.kind.KeptFacts;
import dev.loopgauge.verify.verdict.Judgement;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;

/**
 * Whether an entry tells the same in its heading and in its document. Kinds of documents that this
 * version doesn't know pass with their command and outcome alone.
 */
public final class EntryCheck {
  /** No signal has more samples, so no delay has. */
  private static final double MOST_SAMPLES = Integer.MAX_VALUE;

  /** Documents write delays to 4 decimals of a sample at least. */
  private static final double ROUNDING = 1e-4;

  private final Heading heading;
  private final Map<String, Object> document;

  private EntryCheck(Heading heading, Map<String, Object> document) {
    this.heading = heading;
    this.document = document;
  }

  /** What is wrong with an entry, part of a sentence; empty where nothing is. */
  public static Optional<String> wrong(Entry entry) {
    try {
      return new EntryCheck(entry.heading(), Json.read(entry.document())).wrong();
    } catch (IOException e) {
      return Optional.of("a document that is no JSON");
    }
  }

  private Optional<String> wrong() {
    if (heading.delay().filter(EntryCheck::isBeyondAny).isPresent()) {
      return Optional.of("a delay that no measurement has");
    }
    if (!(document.get("command") instanceof String command)) {
      return Optional.of("a document that names no command");
    }
    if (!heading.outcome().equals(document.get("outcome"))) {
      return Optional.of(
          "the outcome "
              + ExchangeException.shown(heading.outcome())
              + " beside "
              + ExchangeException.shown(document.get("outcome"))
              + " in its document");
    }
    return Documents.isMeasured(document) ? measured(command) : Optional.empty();
  }

  private static boolean isBeyondAny(LoggedDelay logged) {
    return Math.abs(logged.delay().samples()) > MOST_SAMPLES
        || logged.uncertaintySamples() > MOST_SAMPLES;
  }

  private Optional<String> measured(String command) {
    Optional<Document> read = Documents.read(document);
    if (read.isEmpty()) {
      return Optional.of(
          "a document that `" + command + "` doesn't make: its outcome or a number can't be");
    }
    KeptFacts facts = KeptFacts.of(read.get(), document);
    Optional<Judgement> standing = heading.standing();
    if (standing.isPresent() && !standing.equals(facts.standing())) {
      return Optional.of("another standing than its document tells");
    }
    return isSame(facts.delay())
        ? Optional.empty()
        : Optional.of("another delay than its document");
  }

  private boolean isSame(Optional<ShownDelay> told) {
    if (told.isEmpty() || heading.delay().isEmpty()) {
      return told.isEmpty() && heading.delay().isEmpty();
    }
    LoggedDelay logged = heading.delay().get();
    return logged.delay().rate().hertz() == told.get().rateHz()
        && isNear(logged.delay().samples(), told.get().samples())
        && isNear(logged.uncertaintySamples(), told.get().uncertaintySamples());
  }

  private static boolean isNear(double logged, double told) {
    return Math.abs(logged - told) <= ROUNDING;
  }
}
