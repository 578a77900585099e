package dev.loopgauge.report.form;

import java.util.LinkedHashMap;
import java.util.Map;

/** What a command found out, in both its forms. */
public interface Document {
  /** The version of all JSON documents. */
  int SCHEMA = 1;

  /** For a person: lines of at most 80 columns where words allow it, each ended by a newline. */
  String text();

  /**
   * For a script: keys in order; values are strings, booleans, integers, {@code BigDecimal}s, lists
   * and maps of these, or null.
   */
  Map<String, Object> json();

  /** The keys that every document begins with. */
  static Map<String, Object> head(String command, String outcome) {
    Map<String, Object> head = new LinkedHashMap<>();
    head.put("schema", SCHEMA);
    head.put("command", command);
    head.put("outcome", outcome);
    return head;
  }
}
