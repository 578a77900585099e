package dev.loopgauge.cli.option;

import java.util.List;
import java.util.TreeSet;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Some channels of a recording.
 *
 * @param numbers counted from 1, each once, in rising order
 */
public record ChannelList(List<Integer> numbers) {
  /** As many channels as a recording may have. */
  private static final int MOST = 64;

  /** Copies the numbers. */
  public ChannelList {
    numbers = List.copyOf(numbers);
  }

  /** Reads lists such as {@code 2,5,7-9}. */
  public static final class Converter implements ITypeConverter<ChannelList> {
    @Override
    public ChannelList convert(String text) {
      TreeSet<Integer> numbers = new TreeSet<>();
      for (String part : text.split(",", -1)) {
        int dash = part.indexOf('-');
        int from = number(dash < 0 ? part : part.substring(0, dash), text);
        int to = dash < 0 ? from : number(part.substring(dash + 1), text);
        if (from > to) {
          throw expected(text);
        }
        for (int n = from; n <= to; n++) {
          numbers.add(n);
        }
      }
      return new ChannelList(List.copyOf(numbers));
    }

    private static int number(String digits, String whole) {
      if (!digits.strip().matches("[0-9]{1,4}")) {
        throw expected(whole);
      }
      int number = Integer.parseInt(digits.strip());
      if (number < 1 || number > MOST) {
        throw expected(whole);
      }
      return number;
    }

    private static TypeConversionException expected(String found) {
      return new TypeConversionException(
          "expected channels from 1 to " + MOST + " such as 2 or 2,5,7-9, found '" + found + "'");
    }
  }
}
