package dev.loopgauge.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What to add to each path of each mix so that all arrive together, or as far behind as their
 * offsets say.
 *
 * @param step the steps in which the desk sets delays
 * @param mixes the mixes, in the order of the chain
 * @param conflicts the paths for which two mixes want different delays
 */
public record Alignment(DeskStep step, List<AlignedMix> mixes, List<Conflict> conflicts) {
  /** Copies the lists. */
  public Alignment {
    mixes = List.copyOf(mixes);
    conflicts = List.copyOf(conflicts);
  }

  /**
   * Aligns all mixes of a chain.
   *
   * @throws LaterThanTargetException when another path of such a mix arrives after the one to meet
   */
  public static Alignment of(AlignRequest request) {
    List<AlignedMix> mixes =
        request.chain().mixes().values().stream()
            .map(mix -> new MixAligner(request, mix).aligned())
            .toList();
    return new Alignment(request.step(), mixes, conflicts(mixes));
  }

  private static List<Conflict> conflicts(List<AlignedMix> mixes) {
    List<Conflict> conflicts = new ArrayList<>();
    for (int i = 0; i < mixes.size(); i++) {
      for (AlignedMix other : mixes.subList(i + 1, mixes.size())) {
        for (AlignedPath path : set(mixes.get(i))) {
          conflict(mixes.get(i), path, other).ifPresent(conflicts::add);
        }
      }
    }
    return conflicts;
  }

  private static List<AlignedPath> set(AlignedMix mix) {
    return mix.paths().stream().filter(path -> path.part() == AlignedPath.Part.MEETS).toList();
  }

  private static Optional<Conflict> conflict(AlignedMix mix, AlignedPath path, AlignedMix other) {
    return set(other).stream()
        .filter(there -> there.path().equals(path.path()))
        .filter(there -> there.add().samples() != path.add().samples())
        .findFirst()
        .map(
            there ->
                there.add().samples() < path.add().samples()
                    ? new Conflict(path.path(), mix.name(), path.add(), other.name(), there.add())
                    : new Conflict(path.path(), other.name(), there.add(), mix.name(), path.add()));
  }

  /** Whether any performer's limit is passed with the delays added. */
  public boolean passesLimit() {
    return mixes.stream().flatMap(mix -> mix.paths().stream()).anyMatch(AlignedPath::passesLimit);
  }
}
