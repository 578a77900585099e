package dev.loopgauge.chain.file;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/** The fixed answers that a field of a chain file can have. */
final class YamlChoice {
  private YamlChoice() {}

  /** The values by the names that chain files give them, in order. */
  static <T> Map<String, T> by(T[] values, Function<T, String> label) {
    Map<String, T> byLabel = new LinkedHashMap<>();
    for (T value : values) {
      byLabel.put(label.apply(value), value);
    }
    return Collections.unmodifiableMap(byLabel);
  }
}
