package dev.loopgauge.report.exchange;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.EntryDigest;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Keeping;
import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.verify.verdict.Judgement;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/** An entry by the keys that exports name its parts by. Numbers keep every digit. */
public final class EntryKeys {
  static final String SETUP = "setup";
  static final String STANDING = "standing";
  static final String DIGEST = "digest";
  static final String OFFSET = "offset";
  static final String ORIGIN = "origin";
  static final String NUMBER = "number";
  static final String LINK = "link";
  static final String ORDER_AT = "orderAt";

  /** All keys, in their order. */
  static final List<String> ALL =
      List.of(
          "id",
          "at",
          "zone",
          OFFSET,
          "show",
          "when",
          "path",
          "outcome",
          STANDING,
          "delaySamples",
          "sampleRateHz",
          "uncertaintySamples",
          "corrects",
          "note",
          SETUP,
          "chainName",
          "chain",
          "backend",
          "output",
          "input",
          "cardRateHz",
          "blockSize",
          "captureFile",
          "captureDigest",
          "toolVersion",
          "document",
          ORIGIN,
          NUMBER,
          LINK,
          ORDER_AT,
          DIGEST);

  /** The keys that exports of older versions don't have. */
  private static final Set<String> LATER =
      Set.of(STANDING, OFFSET, ORIGIN, NUMBER, LINK, ORDER_AT, DIGEST);

  private EntryKeys() {}

  /** Whether these are the keys of an export of this version or an older one, each once. */
  static boolean areComplete(List<String> keys) {
    Set<String> found = new HashSet<>(keys);
    found.addAll(LATER);
    return new HashSet<>(keys).size() == keys.size() && found.equals(Set.copyOf(ALL));
  }

  /** The entry with its place in the record: what it lacks is null. */
  public static Map<String, Object> of(KeptEntry kept) {
    Entry entry = kept.entry().withoutFolders();
    Map<String, Object> keys = new LinkedHashMap<>();
    ALL.forEach(key -> keys.put(key, null));
    heading(keys, entry.heading());
    keys.put("note", entry.note().orElse(null));
    keys.put(SETUP, setup(entry.setup()));
    entry
        .chain()
        .ifPresent(
            chain -> {
              keys.put("chainName", chain.name());
              keys.put("chain", chain.text());
            });
    entry
        .card()
        .ifPresent(
            card -> {
              keys.put("backend", card.backend());
              keys.put("output", card.output());
              keys.put("input", card.input());
              keys.put("cardRateHz", card.rate().hertz());
              keys.put("blockSize", card.blockSize());
            });
    entry
        .capture()
        .ifPresent(
            capture -> {
              keys.put("captureFile", capture.file());
              keys.put("captureDigest", capture.digest());
            });
    keys.put("toolVersion", entry.toolVersion());
    keys.put("document", entry.document());
    kept.keeping().ifPresent(keeping -> keeping(keys, keeping));
    keys.put(DIGEST, EntryDigest.of(entry));
    return keys;
  }

  /** A list of pairs: a name may hold what the keys of a JSON object can't. */
  private static List<Map<String, String>> setup(Map<String, String> setup) {
    return setup.entrySet().stream().map(EntryKeys::pair).toList();
  }

  private static Map<String, String> pair(Map.Entry<String, String> set) {
    Map<String, String> pair = new LinkedHashMap<>();
    pair.put("name", set.getKey());
    pair.put("value", set.getValue());
    return pair;
  }

  private static void keeping(Map<String, Object> keys, Keeping keeping) {
    keys.put(ORIGIN, keeping.origin());
    keys.put(NUMBER, BigDecimal.valueOf(keeping.number()));
    keys.put(LINK, keeping.link());
    keys.put(ORDER_AT, Instant.ofEpochMilli(keeping.orderMs()).toString());
  }

  private static void heading(Map<String, Object> keys, Heading heading) {
    keys.put("id", heading.id().toString());
    keys.put("at", heading.at().toInstant().toString());
    keys.put("zone", heading.zone());
    keys.put(OFFSET, heading.at().getOffset().getId());
    keys.put("show", heading.show());
    keys.put("when", heading.when().label());
    keys.put("path", heading.path().orElse(null));
    keys.put("outcome", heading.outcome());
    keys.put(STANDING, heading.standing().map(Judgement::label).orElse(null));
    heading
        .delay()
        .ifPresent(
            logged -> {
              keys.put("delaySamples", BigDecimal.valueOf(logged.delay().samples()));
              keys.put("sampleRateHz", logged.delay().rate().hertz());
              keys.put("uncertaintySamples", BigDecimal.valueOf(logged.uncertaintySamples()));
            });
    keys.put("corrects", heading.corrects().map(UUID::toString).orElse(null));
  }
}
