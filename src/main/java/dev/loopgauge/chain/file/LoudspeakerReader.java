package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Loudspeaker;
import dev.loopgauge.chain.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Reads the loudspeaker that a path ends in, and the positions that hear it. */
final class LoudspeakerReader {
  static final String LOUDSPEAKER = "loudspeaker";
  static final String POSITIONS = "positions";

  private final Map<String, Position> positions;

  LoudspeakerReader(Map<String, Position> positions) {
    this.positions = positions;
  }

  /** The loudspeaker of a path, where it names one. */
  Optional<Loudspeaker> read(YamlFields path) throws ChainFormatException {
    Optional<String> named = path.optional(LOUDSPEAKER, value -> value.nameOf(LOUDSPEAKER, all()));
    if (named.isEmpty() && !path.among(List.of(POSITIONS)).isEmpty()) {
      throw path.values()
          .get(POSITIONS)
          .refuseKey(
              "a loudspeaker beside positions",
              "none",
              "say which one they hear, as in throw-metres");
    }
    if (named.isEmpty()) {
      return Optional.empty();
    }
    String loudspeaker = named.get();
    Optional<List<String>> listed = path.optional(POSITIONS, list -> listed(list, loudspeaker));
    return Optional.of(new Loudspeaker(loudspeaker, listed.orElseGet(() -> hearing(loudspeaker))));
  }

  private List<String> listed(YamlValue list, String loudspeaker) throws ChainFormatException {
    List<String> names = new ArrayList<>();
    for (YamlValue item : list.items("position")) {
      String name = item.nameOf("position", positions.keySet());
      if (!positions.get(name).throwMetres().containsKey(loudspeaker)) {
        throw item.refuse(
            "a position with a throw from '" + loudspeaker + "'",
            String.format(
                Locale.ROOT,
                "add %s to the throw-metres of %s, or take %s out",
                loudspeaker,
                name,
                name));
      }
      if (names.contains(name)) {
        throw item.refuse("each position once", "take one of the two out");
      }
      names.add(name);
    }
    return names;
  }

  private List<String> hearing(String loudspeaker) {
    return positions.values().stream()
        .filter(position -> position.throwMetres().containsKey(loudspeaker))
        .map(Position::name)
        .toList();
  }

  private List<String> all() {
    return positions.values().stream()
        .flatMap(position -> position.throwMetres().keySet().stream())
        .distinct()
        .toList();
  }
}
