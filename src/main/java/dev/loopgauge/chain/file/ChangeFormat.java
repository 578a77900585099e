package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.ChangeFormatException;
import dev.loopgauge.chain.ChangeKind;
import dev.loopgauge.chain.Nearest;
import dev.loopgauge.chain.PlaceChange;
import dev.loopgauge.chain.RigChange;
import dev.loopgauge.chain.Shown;
import dev.loopgauge.chain.StageChange;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.util.Comparator;
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

  /** One of each kind that says what it belongs to. */
  public static final List<String> SCOPED_EXAMPLES =
      List.of(
          "host.NAME.block-size=128",
          "host.NAME.sample-rate=96000",
          "position.NAME.direct-metres=60",
          "position.NAME.throw-metres.LOUDSPEAKER=58");

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
    readers.put(ChangeKind.AIR_TEMPERATURE, value -> new PlaceChange.AirTemperature(number(value)));
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
    String value = equals < 0 ? "" : text.substring(equals + 1);
    if (!ScopedChanges.isScoped(name) && kind(name).isEmpty()) {
      throw unknown(text, name, value);
    }
    String example = "write, for example, " + example(name);
    if (value.isEmpty()) {
      throw new ChangeFormatException("the change '" + name + "' needs a value", example);
    }
    try {
      return ScopedChanges.isScoped(name)
          ? ScopedChanges.read(name, value)
              .orElseThrow(() -> new IllegalArgumentException("there is no such change"))
          : READERS.get(kind(name).orElseThrow()).apply(value);
    } catch (IllegalArgumentException e) {
      throw new ChangeFormatException(
          "change " + Shown.quoted(text) + ": " + e.getMessage(), example);
    }
  }

  private static ChangeFormatException unknown(String text, String name, String value) {
    return new ChangeFormatException(
        "expected a change, found " + Shown.quoted(text), hint(name, value));
  }

  private static Optional<ChangeKind> kind(String name) {
    return Stream.of(ChangeKind.values()).filter(kind -> kind.key().equals(name)).findFirst();
  }

  /** What was meant, with the value that was given. */
  private static String hint(String name, String value) {
    List<String> names = Stream.of(ChangeKind.values()).map(ChangeKind::key).toList();
    return Nearest.name(name, names)
        .map(near -> value.isEmpty() ? example(near) : near + "=" + Shown.plain(value))
        .map(meant -> "did you mean " + meant + "?")
        .orElse(
            "the changes are "
                + String.join(", ", EXAMPLES)
                + ", "
                + String.join(", ", SCOPED_EXAMPLES));
  }

  private static String example(String name) {
    return kind(name).map(ChangeKind::example).orElseGet(() -> scopedExample(name));
  }

  private static String scopedExample(String name) {
    String scope = name.substring(0, name.indexOf('.') + 1);
    String last =
        name.contains(".throw-metres.")
            ? ".throw-metres."
            : name.substring(name.lastIndexOf('.')) + "=";
    return SCOPED_EXAMPLES.stream()
        .filter(example -> example.startsWith(scope))
        .min(Comparator.comparing(example -> !example.contains(last)))
        .orElseThrow();
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

  static double number(String value) {
    try {
      return new BigDecimal(value).doubleValue();
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException("'" + value + "' is no number", e);
    }
  }

  static int whole(String value) {
    try {
      return new BigDecimal(value).intValueExact();
    } catch (ArithmeticException | NumberFormatException e) {
      throw new IllegalArgumentException("'" + value + "' is no whole number", e);
    }
  }
}
