package dev.loopgauge.job.event;

import dev.loopgauge.job.UsageException;
import java.util.ArrayList;
import java.util.List;

/**
 * Splits a command into its words, as no shell would. Blanks part words. Between two ' or two " all
 * is taken as it is, blanks too; so a " is written '"' and a ' is written "'". Nothing else means
 * anything: no backslash, variable, wildcard, pipe or semicolon.
 */
final class CommandWords {
  private static final String HINT =
      "blanks part words, and '...' or \"...\" keeps them together, as in"
          + " --on-event \"/opt/tell.sh 'front of house'\"";

  private final List<String> words = new ArrayList<>();
  private final StringBuilder word = new StringBuilder();
  private boolean inWord;

  private CommandWords() {}

  /**
   * The words: the program and its arguments.
   *
   * @throws UsageException when there is no word, or a quote isn't closed
   */
  static List<String> of(String command) {
    CommandWords split = new CommandWords();
    int at = 0;
    while (at < command.length()) {
      at = split.take(command, at);
    }
    split.end();
    if (split.words.isEmpty() || split.words.get(0).isEmpty()) {
      throw new UsageException("--on-event names no program", HINT);
    }
    return List.copyOf(split.words);
  }

  /** Takes a letter or a quoted part; gives back where the next one is. */
  private int take(String command, int at) {
    char letter = command.charAt(at);
    if (Character.isWhitespace(letter)) {
      end();
      return at + 1;
    }
    inWord = true;
    if (letter != '\'' && letter != '"') {
      word.append(letter);
      return at + 1;
    }
    int close = command.indexOf(letter, at + 1);
    if (close < 0) {
      throw new UsageException("--on-event: a " + letter + " isn't closed in: " + command, HINT);
    }
    word.append(command, at + 1, close);
    return close + 1;
  }

  private void end() {
    if (inWord) {
      words.add(word.toString());
      word.setLength(0);
      inWord = false;
    }
  }
}
