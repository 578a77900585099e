package dev.loopgauge.cli.option;

import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.job.kept.ReportFormat;
import dev.loopgauge.journal.When;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import java.math.BigDecimal;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** From the words of the command line to values; what can't be one is refused by picocli. */
public final class Converters {
  private Converters() {}

  /** A sample rate in Hz. */
  public static final class Rate implements ITypeConverter<SampleRate> {
    @Override
    public SampleRate convert(String hertz) {
      try {
        return new SampleRate(wholeNumber(hertz));
      } catch (IllegalArgumentException e) {
        throw new TypeConversionException(e.getMessage());
      }
    }
  }

  /** The name of a file or folder. */
  public static final class FileName implements ITypeConverter<Path> {
    @Override
    public Path convert(String name) {
      try {
        return Path.of(name);
      } catch (InvalidPathException e) {
        throw new TypeConversionException(
            "expected the name of a file, found '" + name + "': " + e.getReason());
      }
    }
  }

  /**
   * One of several values, by its label.
   *
   * @param <T> what they are
   */
  public abstract static class OneOf<T> implements ITypeConverter<T> {
    private final List<T> values;

    /** One of these. */
    protected OneOf(T[] values) {
      this.values = List.of(values);
    }

    /** What a value is called. */
    protected abstract String label(T value);

    @Override
    public T convert(String text) {
      for (T value : values) {
        if (label(value).equals(text)) {
          return value;
        }
      }
      throw new TypeConversionException(expected() + ", found '" + text + "'");
    }

    private String expected() {
      List<String> labels = values.stream().map(this::label).toList();
      int last = labels.size() - 1;
      return "expected " + String.join(", ", labels.subList(0, last)) + " or " + labels.get(last);
    }
  }

  /** The lower-case name of a constant. */
  public static String name(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }

  /** A stimulus. */
  public static final class Kind extends OneOf<StimulusKind> {
    /** By its label. */
    public Kind() {
      super(StimulusKind.values());
    }

    @Override
    protected String label(StimulusKind kind) {
      return kind.label();
    }
  }

  /** The part of a show's day. */
  public static final class Day extends OneOf<When> {
    /** By its label. */
    public Day() {
      super(When.values());
    }

    @Override
    protected String label(When when) {
      return when.label();
    }
  }

  /** A rule for sound against picture. */
  public static final class Rule extends OneOf<PictureRule> {
    /** By its label. */
    public Rule() {
      super(PictureRule.values());
    }

    @Override
    protected String label(PictureRule rule) {
      return rule.label();
    }
  }

  /** How a report is written. */
  public static final class Format extends OneOf<ReportFormat> {
    /** By its name. */
    public Format() {
      super(ReportFormat.values());
    }

    @Override
    protected String label(ReportFormat format) {
      return name(format);
    }
  }

  /** Which arrival is meant. */
  static final class Which extends OneOf<ArrivalChoice> {
    Which() {
      super(new ArrivalChoice[] {ArrivalChoice.FIRST, ArrivalChoice.STRONGEST});
    }

    @Override
    protected String label(ArrivalChoice choice) {
      return choice.label();
    }
  }

  /** A duration such as 30s, 30m or 2h, in minutes. */
  public static final class Minutes implements ITypeConverter<Double> {
    private static final Pattern FORM = Pattern.compile("([0-9]{1,6}(?:[.][0-9]{1,3})?)([smh])");

    @Override
    public Double convert(String text) {
      Matcher found = FORM.matcher(text);
      double amount = found.matches() ? Double.parseDouble(found.group(1)) : 0;
      if (amount <= 0) {
        throw new TypeConversionException(
            "expected a time such as 30s, 30m or 2h, found '" + text + "'");
      }
      return switch (found.group(2)) {
        case "s" -> amount / 60;
        case "h" -> amount * 60;
        default -> amount;
      };
    }
  }

  /** A whole number of at least 1: a channel, a block size, a count. */
  public static final class Count implements ITypeConverter<Integer> {
    @Override
    public Integer convert(String text) {
      int count = wholeNumber(text);
      if (count < 1) {
        throw new TypeConversionException("expected a whole number from 1, found '" + text + "'");
      }
      return count;
    }
  }

  /** A port: 0 to 65535. */
  public static final class Port implements ITypeConverter<Integer> {
    private static final int HIGHEST = 65_535;

    @Override
    public Integer convert(String text) {
      int port = wholeNumber(text);
      if (port < 0 || port > HIGHEST) {
        throw new TypeConversionException(
            "expected a port from 0 to " + HIGHEST + ", found '" + text + "'");
      }
      return port;
    }
  }

  /** A finite number of at least 0. */
  static final class Amount implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      double amount = number(text);
      if (amount < 0) {
        throw new TypeConversionException("expected a number from 0, found '" + text + "'");
      }
      return amount;
    }
  }

  /** A finite number above 0. */
  public static final class Positive implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      double amount = number(text);
      if (amount <= 0) {
        throw new TypeConversionException("expected a number above 0, found '" + text + "'");
      }
      return amount;
    }
  }

  /** A number of at least 0 with the digits that it was written with. */
  static final class Written implements ITypeConverter<BigDecimal> {
    @Override
    public BigDecimal convert(String text) {
      new Amount().convert(text);
      return new BigDecimal(text);
    }
  }

  /** A finite number of either sign, such as a level. */
  public static final class Finite implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return number(text);
    }
  }

  private static int wholeNumber(String text) {
    try {
      return new BigDecimal(text).intValueExact();
    } catch (ArithmeticException | NumberFormatException e) {
      throw new TypeConversionException("expected a whole number, found '" + text + "'");
    }
  }

  private static double number(String text) {
    try {
      double number = new BigDecimal(text).doubleValue();
      if (Double.isFinite(number)) {
        return number;
      }
    } catch (NumberFormatException e) {
      // Told below, together with numbers beyond all measure.
    }
    throw new TypeConversionException("expected a number such as 0.5, found '" + text + "'");
  }
}
