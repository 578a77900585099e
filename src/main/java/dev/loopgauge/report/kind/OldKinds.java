package dev.loopgauge.report.kind;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The one place that knows documents by their keys: {@code measure} and {@code analyze} made
 * several kinds before each had a command of its own, and {@code analyze} of several channels still
 * makes another than of one.
 */
final class OldKinds {
  private static final List<Map.Entry<String, Kind>> BY_KEY =
      List.of(
          Map.entry("soak", Kind.SOAK),
          Map.entry("track", Kind.TRACK),
          Map.entry("pairs", Kind.PAIRS),
          Map.entry("sends", Kind.PATCH),
          Map.entry("channels", Kind.CHANNELS));

  private OldKinds() {}

  /** The kind of a document by one of these commands; empty where it is a measurement. */
  static Optional<Kind> of(String command, Map<?, ?> document) {
    if (!command.equals("measure") && !command.equals("analyze")) {
      return Optional.empty();
    }
    return BY_KEY.stream()
        .filter(entry -> document.containsKey(entry.getKey()))
        .findFirst()
        .map(Map.Entry::getValue);
  }
}
