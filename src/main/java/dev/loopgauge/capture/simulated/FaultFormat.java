package dev.loopgauge.capture.simulated;

import dev.loopgauge.chain.ChangeFormatException;
import dev.loopgauge.chain.Nearest;
import dev.loopgauge.chain.file.ChangeFormat;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** Reads faults as the {@code --fault} option takes them: a name, or a name, = and its value. */
final class FaultFormat {
  private static final Map<String, Kind> KINDS = kinds();

  /** How one kind of fault is written, by an example, and how its value is read. */
  private record Kind(String example, Function<String, Fault> reader) {
    boolean takesValue() {
      return example.contains("=");
    }
  }

  private FaultFormat() {}

  static Fault parse(String text) {
    String name = name(text);
    Kind kind = KINDS.get(name);
    if (kind == null) {
      throw unknown(name);
    }
    if (text.contains("=") != kind.takesValue()) {
      throw new FaultFormatException(
          "the fault '%s' takes %s value".formatted(name, kind.takesValue() ? "a" : "no"),
          "write " + kind.example);
    }
    try {
      return kind.reader.apply(text.substring(text.indexOf('=') + 1));
    } catch (ChangeFormatException e) {
      throw new FaultFormatException(e.getMessage(), e.hint());
    } catch (IllegalArgumentException e) {
      throw new FaultFormatException(
          "fault '%s': %s".formatted(text, e.getMessage()), "write, for example, " + kind.example);
    }
  }

  private static FaultFormatException unknown(String name) {
    String nearest =
        Nearest.name(name, KINDS.keySet()).map(near -> "; did you mean '" + near + "'?").orElse("");
    List<String> examples = KINDS.values().stream().map(Kind::example).toList();
    return new FaultFormatException(
        "there is no fault '" + name + "'" + nearest,
        "the faults are " + String.join(", ", examples));
  }

  private static String name(String text) {
    int equals = text.indexOf('=');
    return equals < 0 ? text : text.substring(0, equals);
  }

  private static Map<String, Kind> kinds() {
    Map<String, Kind> kinds = new LinkedHashMap<>();
    chain(kinds);
    sound(kinds);
    routing(kinds);
    add(kinds, "gone", value -> CardFault.GONE);
    add(kinds, "short", value -> CardFault.SHORT);
    return Collections.unmodifiableMap(kinds);
  }

  private static void chain(Map<String, Kind> kinds) {
    for (String example : ChangeFormat.EXAMPLES) {
      add(kinds, example, value -> new ChainFault(ChangeFormat.parse(name(example) + "=" + value)));
    }
  }

  private static void sound(Map<String, Kind> kinds) {
    add(kinds, "gain=-12", value -> new Gain(number(value)));
    add(kinds, "inverted", value -> new Inverted());
    add(kinds, "silent", value -> new Silent());
    add(kinds, "wrong-signal", value -> new WrongSignal());
    add(kinds, "noise=-30", value -> new Noise(number(value)));
    add(kinds, "hum=-20", value -> new Hum(number(value)));
    add(kinds, "clip=-6", value -> new Overload(number(value)));
    add(kinds, "band-limit=200-4000", FaultFormat::bandLimit);
    add(kinds, "second-arrival=2.5:-6", FaultFormat::secondArrival);
    add(kinds, "drift=50", value -> new ClockFault(number(value)));
    add(kinds, "dropout=0.4:20", FaultFormat::dropout);
    add(kinds, "lost-block=0.4", value -> new LostBlock(number(value)));
    add(kinds, "wrong-speed=44100", value -> new WrongSpeed(number(value)));
    add(kinds, "feedback", value -> new Feedback());
  }

  private static void routing(Map<String, Kind> kinds) {
    add(kinds, "swapped=PATH", Swapped::new);
    add(kinds, "crosstalk=PATH:-20", FaultFormat::crosstalk);
  }

  private static void add(Map<String, Kind> kinds, String example, Function<String, Fault> reader) {
    kinds.put(name(example), new Kind(example, reader));
  }

  private static Fault bandLimit(String value) {
    List<Double> edges = numbers(value, "-");
    if (edges.size() != 2) {
      throw new IllegalArgumentException("a band has two edges, '" + value + "' hasn't");
    }
    return new BandLimit(edges.get(0), edges.get(1));
  }

  private static Fault secondArrival(String value) {
    List<Double> parts = numbers(value, ":");
    return new SecondArrival(parts.get(0), second(parts, SecondArrival.USUAL_LEVEL_DB));
  }

  private static Fault dropout(String value) {
    List<Double> parts = numbers(value, ":");
    return new Dropout(parts.get(0), second(parts, Dropout.USUAL_MS));
  }

  private static Fault crosstalk(String value) {
    int colon = value.lastIndexOf(':');
    if (colon < 1) {
      throw new IllegalArgumentException("a path and its level in dB, '" + value + "' isn't");
    }
    return new Crosstalk(value.substring(0, colon), number(value.substring(colon + 1)));
  }

  private static double second(List<Double> parts, double usual) {
    if (parts.size() > 2) {
      throw new IllegalArgumentException("at most two figures, not " + parts.size());
    }
    return parts.size() == 2 ? parts.get(1) : usual;
  }

  private static List<Double> numbers(String value, String separator) {
    List<Double> numbers = new ArrayList<>();
    for (String part : value.split(separator, -1)) {
      numbers.add(number(part));
    }
    return numbers;
  }

  private static double number(String value) {
    try {
      return new BigDecimal(value).doubleValue();
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException("'" + value + "' is no number", e);
    }
  }
}
