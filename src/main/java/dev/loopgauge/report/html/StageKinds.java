package dev.loopgauge.report.html;

import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.Stage;
import dev.loopgauge.report.plot.Lanes.Part;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What kind of thing a stage is: by the unit that it is stated in where that tells, else by words
 * of its name or note.
 */
public final class StageKinds {
  /** How readers know air. */
  public static final String AIR = Part.AIR.label();

  private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}]+");

  private static final Map<Part, Set<String>> WORDS = words();

  private StageKinds() {}

  private static Map<Part, Set<String>> words() {
    Map<Part, Set<String>> words = new LinkedHashMap<>();
    words.put(Part.AIR, Set.of("air", "throw", "distance"));
    words.put(Part.HOST, Set.of("host", "plugin", "plug", "blocks"));
    words.put(Part.NETWORK, Set.of("network", "net", "radio", "wireless", "packets"));
    words.put(Part.CONVERTER, Set.of("converter", "converters", "adc", "dac", "box"));
    words.put(Part.CONSOLE, Set.of("console", "desk", "mixer"));
    return words;
  }

  /** The kind of a stage of a chain file, for readers. */
  public static String label(Stage stage) {
    return of(stage).label();
  }

  /** The kind of a stage that is known by its name alone, for readers. */
  public static String label(String name) {
    return named(name).label();
  }

  /** Of a stage of a chain file. */
  static Part of(Stage stage) {
    if (stage.delay().isAir()) {
      return Part.AIR;
    }
    boolean host = stage.host().isPresent() || stage.reportedBy().isPresent();
    if (host || stage.delay() instanceof Delay.Blocks) {
      return Part.HOST;
    }
    if (stage.delay() instanceof Delay.Packets) {
      return Part.NETWORK;
    }
    Part named = named(stage.name());
    return named == Part.OTHER ? named(stage.note().orElse("")) : named;
  }

  /** Of a stage that is known by its name alone. */
  static Part named(String name) {
    List<String> words = Arrays.asList(BETWEEN_WORDS.split(name.toLowerCase(Locale.ROOT), -1));
    return WORDS.entrySet().stream()
        .filter(kind -> words.stream().anyMatch(kind.getValue()::contains))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(Part.OTHER);
  }
}
