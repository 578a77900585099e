package dev.loopgauge.chain.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The fields of one mapping in a chain file.
 *
 * @param owner the mapping
 * @param what what it describes, as errors call it
 * @param values its values by key
 */
record YamlFields(YamlValue owner, String what, Map<String, YamlValue> values) {
  /** Makes something of a value. */
  interface Reading<T> {
    T of(YamlValue value) throws ChainFormatException;
  }

  /** What a field that may be left out says, where it is there. */
  <T> Optional<T> optional(String key, Reading<T> reading) throws ChainFormatException {
    YamlValue value = values.get(key);
    return value == null ? Optional.empty() : Optional.of(reading.of(value));
  }

  /** The value of a field that must be there; {@code example} says how it could look. */
  YamlValue required(String key, String example) throws ChainFormatException {
    YamlValue value = values.get(key);
    if (value == null) {
      throw owner.refuseKey(key + " in " + what, "none", "add it, for example " + example);
    }
    return value;
  }

  /** A line of text, where given. */
  Optional<String> text(String key) throws ChainFormatException {
    YamlValue value = values.get(key);
    return value == null ? Optional.empty() : Optional.of(value.text(key));
  }

  /** Refuses a second key where only one of those stated may be. */
  void checkSingle(List<String> stated, String expected, String hint) throws ChainFormatException {
    if (stated.size() > 1) {
      String second = stated.get(1);
      throw values.get(second).refuseKey(expected, second + " beside " + stated.get(0), hint);
    }
  }

  /** Those of the given keys that are there, in the order of the file. */
  List<String> among(List<String> keys) {
    List<String> there = new ArrayList<>(values.keySet());
    there.retainAll(keys);
    return there;
  }
}
