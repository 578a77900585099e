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
  private static final String HINT = "set LC_ALL=C.UTF-8, or your own language with UTF-8, ";

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
    if (wereLost(typed)) {
      throw lost("'" + shown(typed) + "'", "and type it again");
    }
  }

  /**
   * Makes sure that files can be found in the current folder: Java looks for them by its name.
   *
   * @throws UsageException when letters of its name were lost
   */
  public static void checkFolder(String current) {
    if (wereLost(current)) {
      throw lost("the name of the current folder", "or go to another folder");
    }
  }

  private static boolean wereLost(String text) {
    return text.indexOf('\uFFFD') >= 0;
  }

  /**
   * Why a name can't be that of a file: its letters were lost, or it has some that none can have.
   */
  static UsageException noFile(String name, String reason) {
    return wereLost(name)
        ? lost("the name '" + shown(name) + "'", "and name it again")
        : new UsageException(
            "expected the name of a file, found '" + shown(name) + "': " + reason,
            "choose a name of plain letters, digits and dots");
  }

  private static UsageException lost(String what, String next) {
    return new UsageException(
        what + " has letters that this shell's language setting lost", HINT + next);
  }

  private static String shown(String typed) {
    String plain = typed.replaceAll("\uFFFD+", "?").replaceAll("[\\p{Cc}\\p{Cf}]", "?");
    int end = Math.min(plain.codePointCount(0, plain.length()), LONGEST_SHOWN);
    return plain.substring(0, plain.offsetByCodePoints(0, end));
  }
}
