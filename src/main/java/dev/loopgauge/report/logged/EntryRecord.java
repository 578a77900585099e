package dev.loopgauge.report.logged;

import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.KeptCapture;
import dev.loopgauge.journal.SoundCard;
import dev.loopgauge.report.form.Inlined;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * What the journal knows of a measurement, as documents hold it.
 *
 * @param correctedBy the entry that it no longer stands beside
 * @param setup what else moves delays between shows, by names
 * @param capture the name of the recording
 */
public record EntryRecord(
    @Inlined ListedRecord listed,
    Optional<String> correctedBy,
    Optional<String> note,
    Map<String, Object> setup,
    Optional<ChainRecord> chain,
    Optional<CardRecord> card,
    Optional<String> capture,
    String toolVersion) {
  /** A chain file as it was. */
  public record ChainRecord(String name, String sha256, String text) {
    private static ChainRecord of(ChainText chain) {
      return new ChainRecord(chain.withoutFolder().name(), chain.digest(), chain.text());
    }
  }

  /** What was measured with. */
  public record CardRecord(
      String backend, String output, String input, int sampleRateHz, int blockSizeSamples) {
    private static CardRecord of(SoundCard card) {
      return new CardRecord(
          card.backend(), card.output(), card.input(), card.rate().hertz(), card.blockSize());
    }

    private String told() {
      return "%s, %s to %s, %d Hz, block %d"
          .formatted(backend, output, input, sampleRateHz, blockSizeSamples);
    }
  }

  /** Copies the set-up, keeping its order. */
  public EntryRecord {
    setup = Collections.unmodifiableMap(new LinkedHashMap<>(setup));
  }

  static EntryRecord of(Entry entry, Optional<UUID> correctedBy) {
    return new EntryRecord(
        ListedRecord.of(entry.heading()),
        correctedBy.map(UUID::toString),
        entry.note(),
        new LinkedHashMap<>(entry.setup()),
        entry.chain().map(ChainRecord::of),
        entry.card().map(CardRecord::of),
        entry.capture().map(KeptCapture::file),
        entry.toolVersion());
  }

  /** Tells all but what the entry is listed by. */
  void tell(Sheet sheet) {
    note.ifPresent(text -> sheet.row("note", OneLine.line(text)));
    setup.forEach((name, set) -> sheet.row("set", OneLine.line(name + " = " + set)));
    card.ifPresent(with -> sheet.row("with", OneLine.line(with.told())));
    chain.ifPresent(
        file -> sheet.row("chain file", OneLine.line(file.name()) + ", SHA-256 " + file.sha256()));
    capture.ifPresent(file -> sheet.row("recording", OneLine.line(file)));
    listed.corrects().ifPresent(old -> sheet.row("corrects", entry(old)));
    correctedBy.ifPresent(by -> sheet.row("corrected", "by " + entry(by)));
    sheet.row("version", OneLine.line(toolVersion));
    sheet.row("id", listed.id());
  }

  private static String entry(String id) {
    return "entry " + ListedRecord.shortened(id);
  }
}
