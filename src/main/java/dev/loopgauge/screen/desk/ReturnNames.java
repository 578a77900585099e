package dev.loopgauge.screen.desk;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What comes back on which return, in words.
 *
 * @param names by the number of the return, as far as they are known
 * @param other what comes back on all others; empty where that isn't known
 */
record ReturnNames(Map<Integer, String> names, Optional<String> other) {
  private static final String REFERENCE = "reference";

  /** Copies the names. */
  ReturnNames {
    names = Map.copyOf(names);
  }

  /** Where one path is measured: what isn't a reference is that path. */
  static ReturnNames of(ChainPath path, Optional<Integer> reference) {
    Map<Integer, String> names = new HashMap<>();
    against(path).or(() -> reference).ifPresent(number -> names.put(number, REFERENCE));
    return new ReturnNames(names, Optional.of(path.name()));
  }

  /** Where all paths of a chain file are heard, by its patch; several may share a return. */
  static ReturnNames of(Chain chain, Optional<Integer> reference) {
    Map<Integer, String> names = new HashMap<>();
    for (ChainPath path : chain.paths().values()) {
      path.patch()
          .ifPresent(
              patch -> names.merge(patch.returned(), path.name(), (one, two) -> one + ", " + two));
    }
    for (ChainPath path : chain.paths().values()) {
      against(path).ifPresent(number -> names.putIfAbsent(number, REFERENCE));
    }
    reference.ifPresent(number -> names.put(number, REFERENCE));
    return new ReturnNames(names, Optional.empty());
  }

  private static Optional<Integer> against(ChainPath path) {
    return path.patch()
        .filter(patch -> patch.against().isPresent())
        .map(patch -> patch.against().getAsInt());
  }

  /** The name of a return: {@code vocal-house, return 2}. */
  String of(int number) {
    String place = "return " + number;
    return Optional.ofNullable(names.get(number))
        .or(() -> other)
        .map(name -> name + ", " + place)
        .orElse(place);
  }
}
