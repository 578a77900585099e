package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A mix whose paths meet.
 *
 * @param name the mix
 * @param paths its paths, in the order of the mix
 * @param unknown the stages of which it is unknown whether the desk delays the other paths to match
 *     them, where that would change what to add
 */
public record AlignedMix(String name, List<AlignedPath> paths, List<String> unknown) {
  /** Copies the lists. */
  public AlignedMix {
    paths = List.copyOf(paths);
    unknown = List.copyOf(unknown);
  }

  /** The paths that others meet: one for each input that several paths carry, if any. */
  public List<String> targets() {
    return paths.stream().flatMap(path -> path.meets().stream()).distinct().toList();
  }

  /** The same without the paths that the desk can't delay by as much as they need. */
  public AlignedMix reached(DeskStep step, Chain chain) {
    return new AlignedMix(
        name, paths.stream().filter(path -> !path.exceedsDesk(step, chain)).toList(), unknown);
  }

  /** How far apart rounding leaves the two paths of one input that it leaves furthest apart. */
  public Latency widestGap() {
    SampleRate rate = paths.get(0).left().rate();
    return targets().stream()
        .map(target -> gap(target, rate))
        .max(Comparator.comparingDouble(Latency::samples))
        .orElse(new Latency(0, rate));
  }

  private Latency gap(String target, SampleRate rate) {
    DoubleSummaryStatistics left =
        paths.stream()
            .filter(path -> path.meets().filter(target::equals).isPresent())
            .mapToDouble(path -> path.left().samples())
            .summaryStatistics();
    return new Latency(left.getMax() - left.getMin(), rate);
  }

  /** The lowest frequency at which these two cancel, in Hz; empty where nothing is left. */
  public OptionalDouble firstNullHz() {
    return AlignedPath.firstNullHz(widestGap());
  }
}
