package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Nearest;
import dev.loopgauge.chain.Notice;
import dev.loopgauge.chain.Shown;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * A value in a chain file, and where it stands. Each reading method either gives what it promises
 * or refuses with the position.
 *
 * @param file what errors call the file
 * @param key the key before the value, or the value itself where it has none
 * @param node the value
 */
record YamlValue(String file, Node key, Node node) {
  private static final int LONGEST_TEXT = 200;
  private static final Pattern UNPRINTABLE = Pattern.compile(Shown.UNPRINTABLE);
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d+)?");
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[+-]?\\d+,\\d+");
  private static final Pattern WHOLE_NUMBER = Pattern.compile("[+-]?\\d{1,9}");

  static YamlValue of(String file, Node node) {
    return new YamlValue(file, node, node);
  }

  /** A mapping's values by key, in order: no key twice, not too many. */
  Map<String, YamlValue> entries(String what) throws ChainFormatException {
    if (!(node instanceof MappingNode mapping)) {
      throw refuse(
          what + " as 'name: value' pairs",
          "write one pair a line, indented alike, such as sample-rate: 48000");
    }
    List<NodeTuple> tuples = mapping.getValue();
    checkCount(tuples.size());
    Map<String, YamlValue> entries = new LinkedHashMap<>();
    YamlValue before = of(file, node);
    for (NodeTuple tuple : tuples) {
      String name = of(file, tuple.getKeyNode()).text("a name");
      YamlValue value = new YamlValue(file, tuple.getKeyNode(), tuple.getValueNode());
      value.checkDecimalComma(before, name);
      before = value;
      YamlValue first = entries.putIfAbsent(name, value);
      if (first != null) {
        throw value.refuseKey(
            "each name once",
            Shown.quoted(name) + " again, first on line " + line(first.key),
            "take one of the two out or rename it");
      }
    }
    return entries;
  }

  /** A mapping with no other keys than the known ones. */
  YamlFields fields(String what, List<String> known) throws ChainFormatException {
    Map<String, YamlValue> entries = entries(what);
    for (Map.Entry<String, YamlValue> entry : entries.entrySet()) {
      if (!known.contains(entry.getKey())) {
        throw entry
            .getValue()
            .refuseKey(
                "a key of " + what,
                Shown.quoted(entry.getKey()),
                Nearest.hint(entry.getKey(), known));
      }
    }
    return new YamlFields(this, what, entries);
  }

  /** A list with at least one item and not too many. */
  List<YamlValue> items(String what) throws ChainFormatException {
    if (!(node instanceof SequenceNode sequence) || sequence.getValue().isEmpty()) {
      throw refuse("a list of at least one " + what, "write at least one, as in [one, two]");
    }
    checkCount(sequence.getValue().size());
    List<YamlValue> items = new ArrayList<>();
    for (Node item : sequence.getValue()) {
      items.add(of(file, item));
    }
    return items;
  }

  /** A list of names, each of them known. */
  List<String> namesOf(String what, Collection<String> known) throws ChainFormatException {
    List<String> names = new ArrayList<>();
    for (YamlValue item : items(what)) {
      names.add(item.nameOf(what, known));
    }
    return names;
  }

  /** A name that is known. */
  String nameOf(String what, Collection<String> known) throws ChainFormatException {
    String name = text("a " + what);
    if (!known.contains(name)) {
      throw refuse("a known " + what, Nearest.hint(name, known));
    }
    return name;
  }

  /** One of the fixed answers. */
  <T> T choice(String what, Map<String, T> answers) throws ChainFormatException {
    return answers.get(nameOf(what, answers.keySet()));
  }

  /** A line of printable text; white space is drawn together. */
  String text(String what) throws ChainFormatException {
    String text = scalar().orElse("").strip().replaceAll("\\s+", " ");
    if (text.isEmpty()) {
      throw refuse(what, "write text there");
    }
    if (text.length() > LONGEST_TEXT || UNPRINTABLE.matcher(text).find()) {
      throw refuse(what + " of at most " + LONGEST_TEXT + " printable characters", "shorten it");
    }
    return text;
  }

  /** A number of at least {@code lowest} and at most {@code highest}. */
  double number(String what, double lowest, double highest) throws ChainFormatException {
    String text = scalar().orElse("");
    double number = NUMBER.matcher(text).matches() ? Double.parseDouble(text) : Double.NaN;
    if (!(number >= lowest && number <= highest)) {
      throw refuse(
          what + " as a number from " + Shown.number(lowest) + " to " + Shown.number(highest),
          decimalPoint(text).orElse("write digits with a decimal point and no unit"));
    }
    return number;
  }

  /** A whole number of at least {@code lowest} and at most {@code highest}. */
  int whole(String what, int lowest, int highest) throws ChainFormatException {
    return whole(what, lowest, highest, text -> Optional.empty());
  }

  /** The same; {@code meant} says what a text that is none was meant to be, where it is known. */
  int whole(String what, int lowest, int highest, Function<String, Optional<String>> meant)
      throws ChainFormatException {
    String text = scalar().orElse("");
    if (WHOLE_NUMBER.matcher(text).matches()) {
      int number = Integer.parseInt(text);
      if (number >= lowest && number <= highest) {
        return number;
      }
    }
    throw refuse(
        what + " as a whole number from " + lowest + " to " + highest,
        meant.apply(text).map(number -> "did you mean " + number + "? ").orElse("")
            + "write digits only, without a unit");
  }

  private static Optional<String> decimalPoint(String text) {
    return DECIMAL_COMMA.matcher(text).matches()
        ? Optional.of(
            "did you mean " + text.replace(',', '.') + "? write a decimal point, not a comma")
        : Optional.empty();
  }

  /** In {@code { ms: 0,9 }} YAML takes the 9 for a key without a value. */
  private void checkDecimalComma(YamlValue before, String name) throws ChainFormatException {
    String number = before.scalar().orElse("") + "," + name;
    if (node instanceof ScalarNode single && single.getValue().isEmpty()) {
      Optional<String> hint = decimalPoint(number);
      if (hint.isPresent()) {
        throw refuseKey("a decimal point", Shown.quoted(number), hint.get());
      }
    }
  }

  /** The text of a single value; empty for a list or a mapping. */
  Optional<String> scalar() {
    return node instanceof ScalarNode single ? Optional.of(single.getValue()) : Optional.empty();
  }

  /** This value is not what was expected. */
  ChainFormatException refuse(String expected, String hint) {
    return refusal(node, expected, described(), hint);
  }

  /** This value, or what it stands for, is not what was expected. */
  ChainFormatException refuse(String expected, String found, String hint) {
    return refusal(node, expected, found, hint);
  }

  /** This value may be a mistake. */
  Notice notice(String text, String hint) {
    int column = node.getStartMark().map(Mark::getColumn).orElse(0) + 1;
    return new Notice(file + ":" + line(node) + ":" + column + ": " + text, hint);
  }

  /** The key of this value is not what was expected. */
  ChainFormatException refuseKey(String expected, String found, String hint) {
    return refusal(key, expected, found, hint);
  }

  private ChainFormatException refusal(Node at, String expected, String found, String hint) {
    return new ChainFormatException(file, at.getStartMark(), expected, found, hint);
  }

  private void checkCount(int count) throws ChainFormatException {
    if (count > ChainParser.MOST_ENTRIES) {
      throw refusal(
          key,
          "at most " + ChainParser.MOST_ENTRIES + " entries here",
          String.valueOf(count),
          "split the rig into several chain files");
    }
  }

  private String described() {
    if (node instanceof SequenceNode sequence) {
      return sequence.getValue().isEmpty() ? "an empty list" : "a list";
    }
    return scalar().map(text -> text.isEmpty() ? "nothing" : Shown.quoted(text)).orElse("pairs");
  }

  private static int line(Node node) {
    return node.getStartMark().map(Mark::getLine).orElse(0) + 1;
  }
}
