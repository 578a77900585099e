package dev.loopgauge.report.form;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a command found out: a record whose components are the keys of its JSON, in their order,
 * with the text for a person as a function of it. A document that was read again has the same text.
 */
public interface Document extends Whole {
  /** For a person: lines of at most 80 columns where words allow it, each ended by a newline. */
  String text();

  /**
   * For a script: keys in order; values are strings, booleans, integers, {@code BigDecimal}s, lists
   * and maps of these, or null.
   */
  default Map<String, Object> json() {
    return Binder.map((Record) this);
  }

  /** The keys of a document that is written from another record. */
  static Map<String, Object> json(Record keys) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("schema", SCHEMA);
    json.putAll(Binder.map(keys));
    return json;
  }

  /** The keys that every document begins with. */
  static Map<String, Object> head(String command, String outcome) {
    Map<String, Object> head = new LinkedHashMap<>();
    head.put("schema", SCHEMA);
    head.put("command", command);
    head.put("outcome", outcome);
    return head;
  }
}
