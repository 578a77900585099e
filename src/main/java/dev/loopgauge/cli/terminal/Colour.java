package dev.loopgauge.cli.terminal;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * When texts are coloured. Documents write their verdicts in capitals; colour only repeats what
 * these words say.
 */
public enum Colour {
  /** Where somebody looks at a terminal that takes colours, and has not set {@code NO_COLOR}. */
  AUTO,
  /** Everywhere. */
  ALWAYS,
  /** Nowhere. */
  NEVER;

  private static final Pattern GOOD =
      words("WITHIN(?!, BUT)|CHOOSE|SET|(?<!NOT )CLEAN|(?<!NOT )GOOD");
  private static final Pattern DOUBTFUL = words("CAUTION|COLOURS|UNDECIDED|STOPPED|NOT MEASURED");
  private static final Pattern BAD =
      words(
          "OVER|OUTSIDE|CONFLICT|NOTHING FITS|ECHO|LATE|EARLY|NOT CLEAN|BROKE OFF|CHANGED"
              + "|WITHIN, BUT|SOUND LOST|JUMPED|NOT LOCKED|CLIPPED|INVERTED|WRONG LEVEL|UNEVEN"
              + "|WRONGLY REPORTED|OUT OF LIP SYNC|NOT GOOD|No trustworthy reading");

  private static Pattern words(String alternatives) {
    return Pattern.compile("\\b(?:" + alternatives + ")\\b");
  }

  /** Reads the name that stands on the command line. */
  public static final class Converter implements ITypeConverter<Colour> {
    @Override
    public Colour convert(String when) {
      for (Colour colour : Colour.values()) {
        if (colour.name().toLowerCase(Locale.ROOT).equals(when)) {
          return colour;
        }
      }
      throw new TypeConversionException("expected auto, always or never, found '" + when + "'");
    }
  }

  /** Whether to colour what goes to this console. */
  public Ansi on(Console console) {
    return switch (this) {
      case ALWAYS -> Ansi.ON;
      case NEVER -> Ansi.OFF;
      case AUTO -> console.terminal() && isWelcome(console.environment()) ? Ansi.ON : Ansi.OFF;
    };
  }

  private static boolean isWelcome(Map<String, String> environment) {
    return environment.getOrDefault("NO_COLOR", "").isEmpty()
        && !environment.getOrDefault("TERM", "").equals("dumb");
  }

  /** The text with its verdicts coloured, or as it is. */
  public static String paint(String text, Ansi ansi) {
    if (!ansi.enabled()) {
      return text;
    }
    String good = paint(text, GOOD, Ansi.Style.fg_green);
    return paint(paint(good, DOUBTFUL, Ansi.Style.fg_yellow), BAD, Ansi.Style.fg_red);
  }

  private static String paint(String text, Pattern words, Ansi.Style colour) {
    return words
        .matcher(text)
        .replaceAll(
            word ->
                Ansi.Style.bold.on()
                    + colour.on()
                    + word.group()
                    + colour.off()
                    + Ansi.Style.bold.off());
  }
}
