package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Shown;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.composer.Composer;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.parser.ParserImpl;
import org.snakeyaml.engine.v2.scanner.StreamReader;

/** From the text of a YAML file to its tree, refusing what no chain file can be. */
final class YamlText {
  private static final String BYTE_ORDER_MARK = "\uFEFF";
  private static final LoadSettings SETTINGS = LoadSettings.builder().build();

  private YamlText() {}

  /** The one document of the text; {@code file} is what errors call it. */
  static YamlValue compose(String yaml, String file) throws ChainFormatException {
    String text = yaml.startsWith(BYTE_ORDER_MARK) ? yaml.substring(1) : yaml;
    checkLength(text, file);
    checkPrintable(text, file);
    try {
      StreamReader reader = new StreamReader(SETTINGS, text);
      FlatParser parser = new FlatParser(new ParserImpl(SETTINGS, reader), file);
      Optional<Node> root = new Composer(SETTINGS, parser).getSingleNode();
      if (root.isEmpty()) {
        throw empty(file);
      }
      return YamlValue.of(file, root.get());
    } catch (FlatParser.Refusal e) {
      throw e.refused();
    } catch (YamlEngineException e) {
      throw notYaml(file, text, e);
    }
  }

  private static void checkLength(String text, String file) throws ChainFormatException {
    if (text.length() > ChainParser.LONGEST_FILE) {
      throw new ChainFormatException(
          file,
          1,
          1,
          "a chain file of at most " + ChainParser.LONGEST_FILE + " characters",
          String.valueOf(text.length()),
          "check that this is the chain file you meant");
    }
  }

  private static void checkPrintable(String text, String file) throws ChainFormatException {
    int line = 1;
    int column = 1;
    for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
      int c = text.codePointAt(i);
      if (!StreamReader.isPrintable(c)) {
        throw new ChainFormatException(
            file,
            line,
            column,
            "plain text",
            String.format("the character U+%04X", c),
            "save the chain file as UTF-8 text");
      }
      line += c == '\n' ? 1 : 0;
      column = c == '\n' ? 1 : column + 1;
    }
  }

  private static ChainFormatException empty(String file) {
    return new ChainFormatException(
        file, 1, 1, "a chain file", "an empty file", "start with sample-rate, stages and paths");
  }

  private static ChainFormatException notYaml(String file, String text, YamlEngineException e) {
    Optional<Mark> mark = Optional.empty();
    String problem = e.getMessage();
    if (e instanceof MarkedYamlEngineException marked) {
      mark = marked.getProblemMark();
      problem = marked.getProblem();
    }
    if (mark.filter(at -> followsTab(text, at)).isPresent()) {
      return new ChainFormatException(
          file, mark, "spaces", "a tab", "indent with spaces: YAML takes no tabs");
    }
    return new ChainFormatException(
        file,
        mark,
        "YAML",
        "an error: " + Shown.plain(String.valueOf(problem)),
        "check the indentation, colons, quotes and brackets here and on the line before");
  }

  /** Whether there is a tab at the mark or in the indentation before it. */
  private static boolean followsTab(String text, Mark at) {
    String line = text.lines().skip(at.getLine()).findFirst().orElse("");
    String start = line.substring(0, Math.min(line.length(), at.getColumn() + 1));
    int tab = start.indexOf('\t');
    return start.endsWith("\t") || (tab >= 0 && start.substring(0, tab).isBlank());
  }
}
