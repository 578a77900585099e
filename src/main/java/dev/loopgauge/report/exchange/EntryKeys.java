package dev.loopgauge.report.exchange;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.EntryDigest;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.verify.verdict.Judgement;
import java.math.BigDecimal;
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

  /** All keys, in their order. */
  static final List<String> ALL =
      List.of(
          "id",
          "at",
          "zone",
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
          DIGEST);

  /** The keys that exports of older versions don't have. */
  private static final Set<String> LATER = Set.of(STANDING, DIGEST);

  private EntryKeys() {}

  /** Whether these are the keys of an export of this version or an older one, each once. */
  static boolean areComplete(List<String> keys) {
    Set<String> found = new HashSet<>(keys);
    found.addAll(LATER);
    return new HashSet<>(keys).size() == keys.size() && found.equals(Set.copyOf(ALL));
  }

  /** The entry: what it lacks is null. */
  public static Map<String, Object> of(Entry entry) {
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

  private static void heading(Map<String, Object> keys, Heading heading) {
    keys.put("id", heading.id().toString());
    keys.put("at", heading.at().toInstant().toString());
    keys.put("zone", heading.at().getZone().getId());
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
