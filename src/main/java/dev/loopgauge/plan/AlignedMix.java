package dev.loopgauge.plan;

import dev.loopgauge.signal.Latency;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A mix whose paths meet.
 *
 * @param name the mix
 * @param target the path that the others meet
 * @param paths its paths, in the order of the mix
 * @param unknown the stages of which it is unknown whether the desk delays the other paths to match
 *     them, where that would change what to add
 */
public record AlignedMix(
    String name, String target, List<AlignedPath> paths, List<String> unknown) {
  /** Copies the lists. */
  public AlignedMix {
    paths = List.copyOf(paths);
    unknown = List.copyOf(unknown);
  }

  /** How far apart rounding leaves the two paths that it leaves furthest apart. */
  public Latency widestGap() {
    double latest = paths.stream().mapToDouble(path -> path.left().samples()).max().orElse(0);
    double earliest = paths.stream().mapToDouble(path -> path.left().samples()).min().orElse(0);
    return new Latency(latest - earliest, paths.get(0).left().rate());
  }

  /** The lowest frequency at which these two cancel, in Hz; empty where nothing is left. */
  public OptionalDouble firstNullHz() {
    return AlignedPath.firstNullHz(widestGap());
  }
}
