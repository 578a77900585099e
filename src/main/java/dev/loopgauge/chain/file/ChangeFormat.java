package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.ChangeFormatException;
import dev.loopgauge.chain.ChangeKind;
import dev.loopgauge.chain.Nearest;
import dev.loopgauge.chain.RigChange;
import dev.loopgauge.chain.Shown;
import dev.loopgauge.chain.StageChange;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** Reads changes as the {@code --change} option takes them: a name, = and a value. */
public final class ChangeFormat {
  /** One of each kind, as {@link #parse} reads them. */
  public static final List<String> EXAMPLES =
      Stream.of(ChangeKind.values()).map(ChangeKind::example).toList();

  private static final Map<ChangeKind, Function<String, Change>> READERS = readers();

  private ChangeFormat() {}

  private static Map<ChangeKind, Function<String, Change>> readers() {
    Map<ChangeKind, Function<String, Change>> readers = new EnumMap<>(ChangeKind.class);
    readers.put(ChangeKind.BLOCK_SIZE, value -> new RigChange.BlockSize(whole(value)));
    readers.put(
        ChangeKind.SAMPLE_RATE, value -> new RigChange.WordClock(new SampleRate(whole(value))));
    readers.put(ChangeKind.ABSENT, StageChange.Absent::new);
    readers.put(ChangeKind.TWICE, StageChange.Twice::new);
    readers.put(ChangeKind.EXTRA_BLOCK, value -> blocks(value, 1));
    readers.put(ChangeKind.FEWER_BLOCKS, value -> blocks(value, -1));
    readers.put(ChangeKind.NOT_COMPENSATED, StageChange.NotCompensated::new);
    readers.put(ChangeKind.DISTANCE, ChangeFormat::distance);
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
    ChangeKind kind =
        kind(name)
            .orElseThrow(
                () ->
                    new ChangeFormatException(
                        "expected a change, found " + Shown.quoted(text), hint(name)));
    String example = "write, for example, " + kind.example();
    if (equals < 0 || equals == text.length() - 1) {
      throw new ChangeFormatException("the change '" + name + "' needs a value", example);
    }
    try {
      return READERS.get(kind).apply(text.substring(equals + 1));
    } catch (IllegalArgumentException e) {
      throw new ChangeFormatException(
          "change " + Shown.quoted(text) + ": " + e.getMessage(), example);
    }
  }

  private static Optional<ChangeKind> kind(String name) {
    return Stream.of(ChangeKind.values()).filter(kind -> kind.key().equals(name)).findFirst();
  }

  private static String hint(String name) {
    List<String> names = Stream.of(ChangeKind.values()).map(ChangeKind::key).toList();
    return Nearest.name(name, names)
        .flatMap(ChangeFormat::kind)
        .map(near -> "did you mean " + near.example() + "?")
        .orElse("the changes are " + String.join(", ", EXAMPLES));
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
