package dev.loopgauge.report.html;

import static j2html.TagCreator.bdi;

import j2html.tags.DomContent;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** What somebody else wrote: names, notes, file names. */
final class Escaping {
  private static final int CONTROL_PICTURES = 0x2400;
  private static final int LONGEST = 1_000;
  private static final int BRIEF = 120;
  private static final int DELETE = 0x7f;

  /**
   * What has no place in HTML: controls but for newline and tab, lone surrogates, non-characters.
   */
  private static final Pattern UNSHOWN =
      Pattern.compile(
          "[\\p{Cc}\\p{Cs}\\p{IsNoncharacter_Code_Point}\\x{202a}-\\x{202e}\\x{2066}-\\x{2069}&&[^\\n\\t]]");

  private Escaping() {}

  /** A name in a heading or a row: as {@link #isolated}, of 120 characters at most. */
  static DomContent brief(String name) {
    return bdi(shortened(name, BRIEF));
  }

  /** Text that can't turn the order of what stands around it, nor drown it: 1,000 characters. */
  static DomContent isolated(String text) {
    return bdi(shortened(text, LONGEST));
  }

  /** Text of at most this many characters; what was left out is said. */
  static String shortened(String text, int most) {
    int length = text.codePointCount(0, text.length());
    return length <= most
        ? text
        : text.substring(0, text.offsetByCodePoints(0, most))
            + "… (the first %d of %d characters)".formatted(most, length);
  }

  /**
   * Text with control characters made visible: those of ASCII as U+2400 and on, those that turn the
   * order of text (Unicode Standard Annex 9, 2.1 to 2.5) by their number, others as U+FFFD.
   */
  static String visible(String text) {
    return UNSHOWN.matcher(text).replaceAll(Escaping::picture);
  }

  private static String picture(MatchResult found) {
    int character = found.group().codePointAt(0);
    if (character < ' ') {
      return Character.toString(CONTROL_PICTURES + character);
    }
    if (character == DELETE) {
      return "\u2421";
    }
    return Character.getType(character) == Character.FORMAT
        ? "[U+%04X]".formatted(character)
        : "\ufffd";
  }
}
