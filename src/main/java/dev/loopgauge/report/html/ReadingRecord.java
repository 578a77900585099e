package dev.loopgauge.report.html;

import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.SoundCard;
import dev.loopgauge.report.form.Sparse;
import java.time.format.DateTimeFormatter;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * One document of a report, as the report's document holds it.
 *
 * @param source where it is from
 * @param document the document as it was printed
 */
record ReadingRecord(
    String source,
    Optional<String> id,
    Optional<String> at,
    Optional<String> zone,
    Optional<String> show,
    Optional<String> when,
    Optional<String> path,
    Optional<String> note,
    Optional<Map<String, String>> setup,
    Optional<CardRecord> card,
    Optional<ChainRecord> chain,
    Optional<String> measuredBy,
    Map<?, ?> document)
    implements Sparse {
  /** The sound card. */
  record CardRecord(String backend, String output, String input, int sampleRateHz, int blockSize) {
    private static CardRecord of(SoundCard card) {
      return new CardRecord(
          card.backend(), card.output(), card.input(), card.rate().hertz(), card.blockSize());
    }
  }

  /** The chain file. */
  record ChainRecord(String name, String digest, String text) {
    private static ChainRecord of(ChainText chain) {
      return new ChainRecord(chain.name(), chain.digest(), chain.text());
    }
  }

  /** Of a reading. */
  static ReadingRecord of(ReadDocument reading) {
    Optional<Entry> entry = reading.entry();
    return new ReadingRecord(
        reading.source(),
        entry.map(e -> e.heading().id().toString()),
        entry.map(e -> DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(e.heading().at())),
        entry.map(e -> e.heading().at().getZone().getId()),
        entry.map(e -> e.heading().show()),
        entry.map(e -> e.heading().when().label()),
        entry.flatMap(e -> e.heading().path()),
        entry.flatMap(Entry::note),
        entry.map(Entry::setup),
        entry.flatMap(Entry::card).map(CardRecord::of),
        entry.flatMap(Entry::chain).map(ChainRecord::of),
        entry.map(Entry::toolVersion),
        reading.json());
  }

  /** What the journal knows, where it is not from there. */
  @Override
  public Set<String> leftOut() {
    return id.isPresent()
        ? Set.of()
        : Set.of(
            "id",
            "at",
            "zone",
            "show",
            "when",
            "path",
            "note",
            "setup",
            "card",
            "chain",
            "measuredBy");
  }
}
