package dev.loopgauge.cli.option;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import java.math.BigDecimal;
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

  /** A stimulus by its label. */
  public static final class Kind implements ITypeConverter<StimulusKind> {
    @Override
    public StimulusKind convert(String label) {
      for (StimulusKind kind : StimulusKind.values()) {
        if (kind.label().equals(label)) {
          return kind;
        }
      }
      throw new TypeConversionException("expected click, sweep or mls, found '" + label + "'");
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
