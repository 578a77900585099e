package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Mix;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The pairs of a mix that matter: two paths that carry the same input to the same place. Of up to
 * {@value #MOST_PAIRED} such paths each is paired with each. Of more, paths that are alike count
 * once, and each kind is paired with the first that is heard, which is what the ear compares with.
 *
 * @param pairs the pairs
 * @param leftOut how many pairs of the same input are left out by that
 */
record MixPairs(List<MixPair> pairs, int leftOut) {
  /** The most paths of one input that are paired each with each: that makes 435 pairs. */
  static final int MOST_PAIRED = 30;

  /** What makes paths alike: nothing but their names tells them apart. */
  private record Kind(
      List<String> stages, List<String> loop, Optional<?> loudspeaker, double levelDb) {
    static Kind of(Feeding feeding) {
      ChainPath path = feeding.path();
      List<String> loop = path.loop().orElse(List.of());
      return new Kind(path.stages(), loop, path.loudspeaker(), feeding.entry().levelDb());
    }
  }

  static MixPairs of(Chain chain, Mix mix) {
    Map<String, List<Feeding>> byInput = new LinkedHashMap<>();
    for (Feeding feeding : Feeding.of(chain, mix)) {
      byInput.computeIfAbsent(feeding.path().input(), input -> new ArrayList<>()).add(feeding);
    }
    List<MixPair> pairs = new ArrayList<>();
    int leftOut = 0;
    for (List<Feeding> sameInput : byInput.values()) {
      int before = pairs.size();
      if (sameInput.size() <= MOST_PAIRED) {
        eachWithEach(chain, sameInput, pairs);
      } else {
        kindsWithTheFirst(chain, sameInput, pairs);
        leftOut += sameInput.size() * (sameInput.size() - 1) / 2 - (pairs.size() - before);
      }
    }
    return new MixPairs(pairs, leftOut);
  }

  private static void eachWithEach(Chain chain, List<Feeding> paths, List<MixPair> pairs) {
    for (int i = 0; i < paths.size(); i++) {
      for (Feeding other : paths.subList(i + 1, paths.size())) {
        pairs.addAll(between(chain, paths.get(i), other));
      }
    }
  }

  private static void kindsWithTheFirst(Chain chain, List<Feeding> paths, List<MixPair> pairs) {
    Map<Kind, Feeding> kinds = new LinkedHashMap<>();
    paths.forEach(path -> kinds.putIfAbsent(Kind.of(path), path));
    Feeding first = first(kinds.values());
    kinds.values().stream()
        .filter(kind -> !kind.equals(first))
        .forEach(kind -> pairs.addAll(between(chain, first, kind)));
  }

  private static Feeding first(Collection<Feeding> paths) {
    return paths.stream()
        .min(Comparator.comparingDouble(path -> path.budget().delay().samples()))
        .orElseThrow();
  }

  /** None where they are never heard at the same place. */
  private static List<MixPair> between(Chain chain, Feeding one, Feeding other) {
    if (one.air().isEmpty() && other.air().isEmpty()) {
      return List.of(MixPair.of(chain, Optional.empty(), one, other));
    }
    return one.positionsWith(other).stream()
        .map(position -> MixPair.of(chain, Optional.of(position), one, other))
        .toList();
  }
}
