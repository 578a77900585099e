package dev.loopgauge.screen.desk;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What comes back on which return, in words, and when something should.
 *
 * @param names by the number of the return, as far as they are known
 * @param other what comes back on all others; empty where that isn't known
 * @param fedBy the sends that a return hears, by its number; one that isn't named hears whichever
 *     plays
 * @param isAwaited whether silence on a return that hears what plays is worth a word
 */
record ReturnNames(
    Map<Integer, String> names,
    Optional<String> other,
    Map<Integer, Set<Integer>> fedBy,
    boolean isAwaited) {
  private static final String REFERENCE = "reference";

  /** Copies the names. */
  ReturnNames {
    names = Map.copyOf(names);
    fedBy = Map.copyOf(fedBy);
  }

  /** Where one path is measured: what isn't a reference is that path. */
  static ReturnNames ofPath(ChainPath path, Optional<Integer> reference) {
    Map<Integer, String> names = new HashMap<>();
    against(path).or(() -> reference).ifPresent(number -> names.put(number, REFERENCE));
    return new ReturnNames(names, Optional.of(path.name()), Map.of(), true);
  }

  /**
   * Where all paths of a chain file are heard at once, by its patch; several may share a return.
   */
  static ReturnNames ofAll(Chain chain, Optional<Integer> reference) {
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
    return new ReturnNames(names, Optional.empty(), Map.of(), true);
  }

  /** The same where they are heard in turn. */
  static ReturnNames ofRound(Chain chain, Optional<Integer> reference) {
    Map<Integer, Set<Integer>> fedBy = new HashMap<>();
    for (ChainPath path : chain.paths().values()) {
      path.patch()
          .ifPresent(
              patch ->
                  fedBy
                      .computeIfAbsent(patch.returned(), number -> new HashSet<>())
                      .add(patch.send()));
    }
    for (ChainPath path : chain.paths().values()) {
      against(path).ifPresent(fedBy::remove);
    }
    reference.ifPresent(fedBy::remove);
    ReturnNames all = ofAll(chain, reference);
    return new ReturnNames(all.names, all.other, fedBy, true);
  }

  /** The same where it is to be found out what comes back where. */
  ReturnNames unsure() {
    return new ReturnNames(names, other, Map.of(), false);
  }

  /** Whether a return hears any of these sends. */
  boolean isFed(int number, Set<Integer> playing) {
    Set<Integer> sends = fedBy.get(number);
    return sends == null || !Collections.disjoint(sends, playing);
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
