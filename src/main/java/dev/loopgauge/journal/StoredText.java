package dev.loopgauge.journal;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Text as the tables hold it. Names and notes may hold anything; what a database can't store, the
 * character NUL and halves of surrogate pairs, is written as {@code \}{@code uXXXX} and a backslash
 * as two. Equal texts stay equal, and all others stay different.
 */
public final class StoredText {
  private static final Pattern ESCAPED = Pattern.compile("\\\\(?:u[0-9a-f]{4}|[\\\\tn])");

  private StoredText() {}

  /** The text as it is stored. */
  public static String stored(String text) {
    if (isPlain(text)) {
      return text;
    }
    StringBuilder stored = new StringBuilder(text.length() + 16);
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\\') {
        stored.append("\\\\");
      } else if (c == 0 || isHalf(text, i)) {
        stored.append("\\u").append("%04x".formatted((int) c));
      } else {
        stored.append(c);
      }
    }
    return stored.toString();
  }

  private static boolean isPlain(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\\' || c == 0 || Character.isSurrogate(c)) {
        return false;
      }
    }
    return true;
  }

  private static boolean isHalf(String text, int at) {
    char c = text.charAt(at);
    if (Character.isHighSurrogate(c)) {
      return at + 1 == text.length() || !Character.isLowSurrogate(text.charAt(at + 1));
    }
    return Character.isLowSurrogate(c)
        && (at == 0 || !Character.isHighSurrogate(text.charAt(at - 1)));
  }

  /** The text that was stored. */
  public static String read(String stored) {
    return stored.indexOf('\\') < 0 ? stored : unescaped(stored);
  }

  private static String unescaped(String stored) {
    return ESCAPED.matcher(stored).replaceAll(escaped -> Matcher.quoteReplacement(read(escaped)));
  }

  private static String read(MatchResult escaped) {
    char kind = escaped.group().charAt(1);
    return switch (kind) {
      case 'u' -> String.valueOf((char) Integer.parseInt(escaped.group().substring(2), 16));
      case 't' -> "\t";
      case 'n' -> "\n";
      default -> String.valueOf(kind);
    };
  }

  /** A set-up as one text: a line for each name, a tab before its value. */
  public static String stored(Map<String, String> setup) {
    StringBuilder stored = new StringBuilder();
    setup.forEach(
        (name, value) ->
            stored.append(inLine(name)).append('\t').append(inLine(value)).append('\n'));
    return stored.toString();
  }

  private static String inLine(String text) {
    return stored(text).replace("\t", "\\t").replace("\n", "\\n");
  }

  /** The set-up that was stored, in its order. */
  public static Map<String, String> readSetup(String stored) {
    Map<String, String> setup = new LinkedHashMap<>();
    for (String line : stored.split("\n", -1)) {
      int tab = line.indexOf('\t');
      if (tab >= 0) {
        setup.put(read(line.substring(0, tab)), read(line.substring(tab + 1)));
      }
    }
    return Collections.unmodifiableMap(setup);
  }
}
