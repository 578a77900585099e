package dev.loopgauge.report.html;

import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.SoundCard;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.Map;

/** What the journal knows of a measurement, as keys of a document. */
final class EntryJson {
  private EntryJson() {}

  /** Puts all but the document itself. */
  static void put(Map<String, Object> json, Entry entry) {
    json.put("id", entry.heading().id().toString());
    json.put("at", DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(entry.heading().at()));
    json.put("zone", entry.heading().at().getZone().getId());
    json.put("show", entry.heading().show());
    json.put("when", entry.heading().when().label());
    json.put("path", entry.heading().path().orElse(null));
    json.put("note", entry.note().orElse(null));
    json.put("setup", entry.setup());
    json.put("card", entry.card().map(EntryJson::card).orElse(null));
    json.put("chain", entry.chain().map(EntryJson::chain).orElse(null));
    json.put("measuredBy", entry.toolVersion());
  }

  private static Map<String, Object> card(SoundCard card) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("backend", card.backend());
    json.put("output", card.output());
    json.put("input", card.input());
    json.put("sampleRateHz", card.rate().hertz());
    json.put("blockSize", card.blockSize());
    return json;
  }

  private static Map<String, Object> chain(ChainText chain) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("name", chain.name());
    json.put("digest", chain.digest());
    json.put("text", chain.text());
    return json;
  }
}
