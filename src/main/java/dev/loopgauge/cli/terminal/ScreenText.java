package dev.loopgauge.cli.terminal;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Text that was wrapped for 80 columns, wrapped again for a terminal of another width. Lines that
 * were broken there are joined first; tables keep their columns.
 */
final class ScreenText {
  private static final int WRITTEN_COLUMNS = 80;

  /** A label and the blanks behind it, as rows begin with. */
  private static final Pattern LABEL = Pattern.compile(" {2}(?:\\S(?:.*?\\S)?)? {2,}(?=\\S)");

  /** Where the words of a row begin; tables have narrower columns, or none. */
  private static final int LEAST_LABEL = 15;

  private final int columns;
  private final StringBuilder fitted = new StringBuilder();

  private ScreenText(int columns) {
    this.columns = columns;
  }

  /**
   * The text for a terminal.
   *
   * @param text lines, each ended by a newline
   * @param columns the terminal's width
   */
  static String fitted(String text, int columns) {
    if (columns == WRITTEN_COLUMNS) {
      return text;
    }
    ScreenText screen = new ScreenText(columns);
    joined(text).forEach(screen::wrap);
    return text.endsWith("\n")
        ? screen.fitted.toString()
        : screen.fitted.substring(0, screen.fitted.length() - 1);
  }

  /** The lines before they were broken. */
  private static List<String> joined(String text) {
    List<String> joined = new ArrayList<>();
    int last = 0;
    for (String line : text.lines().toList()) {
      int end = joined.size() - 1;
      if (end >= 0 && goesOn(joined.get(end), last, line)) {
        joined.set(end, joined.get(end) + " " + line.strip());
      } else {
        joined.add(line);
      }
      last = line.length();
    }
    return joined;
  }

  /** Whether a line is what did not fit behind the one before it. */
  private static boolean goesOn(String before, int lastColumns, String line) {
    String words = line.stripLeading();
    int indent = line.length() - words.length();
    int first = words.indexOf(' ') < 0 ? words.length() : words.indexOf(' ');
    return !words.isEmpty()
        && !before.isBlank()
        && indent == hang(before)
        && lastColumns + 1 + first > WRITTEN_COLUMNS;
  }

  /** How deep the lines begin that go on with a line. */
  private static int hang(String line) {
    Matcher label = LABEL.matcher(line);
    return label.lookingAt() && label.end() >= LEAST_LABEL ? label.end() : 2;
  }

  private void wrap(String line) {
    int hang = hang(line);
    String indent = " ".repeat(Math.min(hang, columns / 2));
    int start = line.length() <= columns ? line.length() : Math.max(0, hang > 2 ? hang : 0);
    fitted.append(line, 0, start);
    int column = start;
    boolean first = true;
    for (String word : line.substring(start).split("(?<=\\S) (?=\\S)", -1)) {
      if (!first && column + 1 + word.length() > columns) {
        fitted.append('\n').append(indent);
        column = indent.length();
      } else if (!first) {
        fitted.append(' ');
        column++;
      }
      fitted.append(word);
      column += word.length();
      first = false;
    }
    fitted.append('\n');
  }
}
