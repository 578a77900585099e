package dev.loopgauge.cli.terminal;

import dev.loopgauge.job.UsageException;
import java.util.List;

/**
 * Whether what was typed came through whole. Where the language setting of a shell has no letter
 * for what was typed, as in {@code LC_ALL=C}, Java hands on U+FFFD in its place, which would be
 * stored for ever.
 */
public final class Letters {
  private static final int LONGEST_SHOWN = 40;

  private Letters() {}

  /**
   * Makes sure that no letter of the arguments was lost.
   *
   * @throws UsageException when one was
   */
  public static void check(List<String> args) {
    for (String arg : args) {
      check(arg);
    }
  }

  private static void check(String typed) {
    if (typed.indexOf('\uFFFD') >= 0) {
      throw new UsageException(
          "'" + shown(typed) + "' has letters that this shell's language setting lost",
          "set LC_ALL=C.UTF-8, or your own language with UTF-8, and type it again");
    }
  }

  private static String shown(String typed) {
    String plain = typed.replaceAll("\uFFFD+", "?").replaceAll("[\\p{Cc}\\p{Cf}]", "?");
    int end = Math.min(plain.codePointCount(0, plain.length()), LONGEST_SHOWN);
    return plain.substring(0, plain.offsetByCodePoints(0, end));
  }
}
