package dev.loopgauge.setup;

import java.time.DateTimeException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/**
 * The settings of one YAML mapping, each with the line it stands on. Reading takes a setting out;
 * what nobody took is refused at the end by {@link #refuseTheRest}.
 */
final class Settings {
  /** What to try with a file that can't be used. */
  static final String HINT = "correct the file, or remove it and save it again";

  private final String source;
  private final int line;
  private final Map<String, Setting> settings = new LinkedHashMap<>();

  private record Setting(int line, Node value) {}

  private Settings(String source, int line) {
    this.source = source;
    this.line = line;
  }

  static Settings of(String source, Node node) throws SetupException {
    Settings settings = new Settings(source, line(node));
    if (!(node instanceof MappingNode mapping)) {
      throw settings.refused(settings.line, "expected settings as 'key: value'");
    }
    for (NodeTuple tuple : mapping.getValue()) {
      settings.put(tuple.getKeyNode(), tuple.getValueNode());
    }
    return settings;
  }

  private void put(Node key, Node value) throws SetupException {
    if (!(key instanceof ScalarNode name)) {
      throw refused(line(key), "expected the name of a setting");
    }
    if (settings.put(name.getValue(), new Setting(line(key), value)) != null) {
      throw refused(line(key), "'" + name.getValue() + "' stands there a second time");
    }
  }

  /**
   * A setting that must be there.
   *
   * @param expected what its value must be, for the message
   * @param parser from the value; throws {@link IllegalArgumentException} for a wrong one
   */
  <T> T required(String key, String expected, Function<String, T> parser) throws SetupException {
    Optional<T> value = optional(key, expected, parser);
    if (value.isEmpty()) {
      throw refused(line, "'" + key + "' is missing: expected " + expected);
    }
    return value.get();
  }

  /** A setting that may be left out. */
  <T> Optional<T> optional(String key, String expected, Function<String, T> parser)
      throws SetupException {
    Setting setting = settings.remove(key);
    if (setting == null) {
      return Optional.empty();
    }
    String at = "'" + key + "': expected " + expected + ", found ";
    if (!(setting.value() instanceof ScalarNode scalar)) {
      throw refused(setting.line(), at + "a list or a section");
    }
    String text = scalar.getValue();
    try {
      return Optional.of(parser.apply(text));
    } catch (NumberFormatException | DateTimeException e) {
      throw refused(setting.line(), at + "'" + text + "'");
    } catch (IllegalArgumentException e) {
      throw refused(setting.line(), at + "'" + text + "' (" + e.getMessage() + ")");
    }
  }

  /** Settings under a key of their own, which may be left out. */
  Optional<Settings> section(String key) throws SetupException {
    Setting setting = settings.remove(key);
    return setting == null ? Optional.empty() : Optional.of(of(source, setting.value()));
  }

  /** Refuses what was not taken. */
  void refuseTheRest() throws SetupException {
    for (Map.Entry<String, Setting> left : settings.entrySet()) {
      throw refused(left.getValue().line(), "there is no setting '" + left.getKey() + "'");
    }
  }

  private SetupException refused(int at, String what) {
    return new SetupException(source + ":" + at + ": " + what, HINT);
  }

  private static int line(Node node) {
    return node.getStartMark().map(Mark::getLine).orElse(0) + 1;
  }
}
