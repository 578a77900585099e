package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.HostChange;
import dev.loopgauge.chain.PlaceChange;
import dev.loopgauge.signal.SampleRate;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;

/** Reads changes whose names say what they belong to: {@code host.NAME.block-size}. */
final class ScopedChanges {
  private static final String HOST = "host.";
  private static final String POSITION = "position.";
  private static final String THROW = ".throw-metres.";

  private static final Map<String, BiFunction<String, String, Change>> OF_HOST =
      Map.of(
          ".block-size",
          (name, value) -> new HostChange.BlockSize(name, ChangeFormat.whole(value)),
          ".sample-rate",
          (name, value) ->
              new HostChange.WordClock(name, new SampleRate(ChangeFormat.whole(value))));

  private ScopedChanges() {}

  /** Whether a name begins as one of these does. */
  static boolean isScoped(String name) {
    return name.startsWith(HOST) || name.startsWith(POSITION);
  }

  /**
   * The change of that name and value; empty where there is none of that name.
   *
   * @throws IllegalArgumentException when the value can't be one
   */
  static Optional<Change> read(String name, String value) {
    return name.startsWith(HOST) ? ofHost(name, value) : ofPosition(name, value);
  }

  private static Optional<Change> ofHost(String name, String value) {
    int dot = name.lastIndexOf('.');
    BiFunction<String, String, Change> reader = OF_HOST.get(name.substring(dot));
    return reader == null || dot <= HOST.length()
        ? Optional.empty()
        : Optional.of(reader.apply(name.substring(HOST.length(), dot), value));
  }

  private static Optional<Change> ofPosition(String name, String value) {
    String scope = name.substring(POSITION.length());
    int toThrow = scope.indexOf(THROW);
    if (toThrow > 0 && toThrow + THROW.length() < scope.length()) {
      String loudspeaker = scope.substring(toThrow + THROW.length());
      return Optional.of(
          new PlaceChange.Throw(
              scope.substring(0, toThrow), loudspeaker, ChangeFormat.number(value)));
    }
    String moved = "." + PositionReader.DIRECT_METRES;
    return scope.endsWith(moved) && scope.length() > moved.length()
        ? Optional.of(
            new PlaceChange.Moved(
                scope.substring(0, scope.length() - moved.length()), ChangeFormat.number(value)))
        : Optional.empty();
  }
}
