package dev.loopgauge.capture.simulated;

import dev.loopgauge.chain.ChangeFormatException;
import dev.loopgauge.chain.Nearest;
import dev.loopgauge.chain.file.ChangeFormat;
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
    time(kinds);
    filters(kinds);
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
    add(kinds, "gain=-12", value -> new Gain(FaultFigures.one(value)));
    add(kinds, "inverted", value -> new Inverted());
    add(kinds, "silent", value -> new Silent());
    add(kinds, "wrong-signal", value -> new WrongSignal());
    add(kinds, "noise=-30", value -> new Noise(FaultFigures.one(value)));
    add(kinds, "hum=-20", value -> new Hum(FaultFigures.one(value)));
    add(kinds, "clip=-6", value -> new Overload(FaultFigures.one(value)));
    add(kinds, "compressor=-30:4", FaultFormat::compressor);
    add(kinds, "band-limit=200-4000", FaultFormat::bandLimit);
    add(kinds, "second-arrival=2.5:-6", FaultFormat::secondArrival);
    add(kinds, "chorus=0.5:3", FaultFormat::chorus);
    add(kinds, "feedback", value -> new Feedback());
  }

  private static void time(Map<String, Kind> kinds) {
    add(kinds, "drift=50", value -> new ClockFault(FaultFigures.one(value)));
    add(kinds, "dropout=0.4:20", FaultFormat::dropout);
    add(kinds, "lost-block=0.4", value -> new LostBlock(FaultFigures.one(value)));
    add(kinds, "stutters=0.3:0.5:0.7", FaultFormat::stutters);
    add(kinds, "wrong-speed=44100", value -> new WrongSpeed(FaultFigures.one(value)));
    add(kinds, "skew=0.4", value -> new Skew(FaultFigures.one(value)));
  }

  private static void filters(Map<String, Kind> kinds) {
    FilterFormat.readers()
        .forEach(
            (example, reader) -> add(kinds, example, value -> new Filtered(reader.apply(value))));
  }

  private static void routing(Map<String, Kind> kinds) {
    add(kinds, "swapped=PATH", Swapped::new);
    add(kinds, "crosstalk=PATH:-20", FaultFormat::crosstalk);
  }

  private static void add(Map<String, Kind> kinds, String example, Function<String, Fault> reader) {
    kinds.put(name(example), new Kind(example, reader));
  }

  private static Fault bandLimit(String value) {
    FaultFigures edges = FaultFigures.of(value, "-", 2, 2);
    return new BandLimit(edges.at(0), edges.at(1));
  }

  private static Fault secondArrival(String value) {
    FaultFigures figures = FaultFigures.of(value, 1, 2);
    return new SecondArrival(figures.at(0), figures.at(1, SecondArrival.USUAL_LEVEL_DB));
  }

  private static Fault chorus(String value) {
    FaultFigures figures = FaultFigures.of(value, 2, 3);
    return new Chorus(figures.at(0), figures.at(1), figures.at(2, Chorus.USUAL_LEVEL_DB));
  }

  private static Fault compressor(String value) {
    FaultFigures figures = FaultFigures.of(value, 2, 4);
    return new Compressor(
        figures.at(0),
        figures.at(1),
        figures.at(2, Compressor.USUAL_ATTACK_MS),
        figures.at(3, Compressor.USUAL_RELEASE_MS));
  }

  private static Fault dropout(String value) {
    FaultFigures figures = FaultFigures.of(value, 1, 2);
    return new Dropout(figures.at(0), figures.at(1, Dropout.USUAL_MS));
  }

  private static Fault stutters(String value) {
    return new Stutters(FaultFigures.of(value, 1, Stutters.MOST).values());
  }

  private static Fault crosstalk(String value) {
    int colon = value.lastIndexOf(':');
    if (colon < 1) {
      throw new IllegalArgumentException("a path and its level in dB, '" + value + "' isn't");
    }
    return new Crosstalk(value.substring(0, colon), FaultFigures.one(value.substring(colon + 1)));
  }
}
