package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.ChangeFormatException;
import dev.loopgauge.chain.Nearest;
import dev.loopgauge.chain.RigChange;
import dev.loopgauge.chain.Shown;
import dev.loopgauge.chain.StageChange;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** Reads changes as the {@code --change} option takes them: a name, = and a value. */
public final class ChangeFormat {
  /** One of each kind, as {@link #parse} reads them. */
  public static final List<String> EXAMPLES =
      List.of(
          "block-size=128",
          "sample-rate=44100",
          "absent=STAGE",
          "twice=STAGE",
          "extra-block=STAGE",
          "fewer-blocks=STAGE",
          "not-compensated=STAGE",
          "distance=STAGE:METRES");

  private static final Map<String, Function<String, Change>> READERS = readers();

  private ChangeFormat() {}

  private static Map<String, Function<String, Change>> readers() {
    Map<String, Function<String, Change>> readers = new LinkedHashMap<>();
    readers.put("block-size", value -> new RigChange.BlockSize(whole(value)));
    readers.put("sample-rate", value -> new RigChange.WordClock(new SampleRate(whole(value))));
    readers.put("absent", StageChange.Absent::new);
    readers.put("twice", StageChange.Twice::new);
    readers.put("extra-block", value -> blocks(value, 1));
    readers.put("fewer-blocks", value -> blocks(value, -1));
    readers.put("not-compensated", StageChange.NotCompensated::new);
    readers.put("distance", ChangeFormat::distance);
    return readers;
  }

  /**
   * Reads a change as command lines write it, such as {@code block-size=256} or {@code
   * absent=limiter}.
   *
   * @throws ChangeFormatException when there is no such change, or its value can't be one
   */
  public static Change parse(String text) {
    int equals = text.indexOf('=');
    String name = equals < 0 ? text : text.substring(0, equals);
    Function<String, Change> reader = READERS.get(name);
    if (reader == null) {
      throw new ChangeFormatException("expected a change, found " + Shown.quoted(text), hint(name));
    }
    if (equals < 0 || equals == text.length() - 1) {
      throw new ChangeFormatException(
          "the change '" + name + "' needs a value", "write, for example, " + example(name));
    }
    try {
      return reader.apply(text.substring(equals + 1));
    } catch (IllegalArgumentException e) {
      throw new ChangeFormatException(
          "change %s: %s".formatted(Shown.quoted(text), e.getMessage()),
          "write, for example, " + example(name));
    }
  }

  private static String hint(String name) {
    return Nearest.name(name, READERS.keySet())
        .map(near -> "did you mean " + example(near) + "?")
        .orElse("the changes are " + String.join(", ", EXAMPLES));
  }

  private static String example(String name) {
    return EXAMPLES.stream().filter(e -> e.startsWith(name + "=")).findFirst().orElseThrow();
  }

  private static Change distance(String value) {
    int colon = value.lastIndexOf(':');
    if (colon < 0) {
      throw new IllegalArgumentException("it needs a stage, a colon and metres");
    }
    return new StageChange.Distance(value.substring(0, colon), number(value.substring(colon + 1)));
  }

  private static Change blocks(String value, int sign) {
    int colon = value.lastIndexOf(':');
    return colon < 0
        ? new StageChange.HostBlocks(value, sign)
        : new StageChange.HostBlocks(
            value.substring(0, colon), sign * count(value.substring(colon + 1)));
  }

  private static int count(String value) {
    int count = whole(value);
    if (count < 1) {
      throw new IllegalArgumentException("'" + value + "' is no number of blocks");
    }
    return count;
  }

  private static double number(String value) {
    try {
      return new BigDecimal(value).doubleValue();
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException("'" + value + "' is no number", e);
    }
  }

  private static int whole(String value) {
    try {
      return new BigDecimal(value).intValueExact();
    } catch (ArithmeticException | NumberFormatException e) {
      throw new IllegalArgumentException("'" + value + "' is no whole number", e);
    }
  }
}
