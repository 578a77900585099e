package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.Compensation;
import dev.loopgauge.chain.Mix;
import dev.loopgauge.chain.MixEntry;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * How the paths of a mix are predicted to meet.
 *
 * @param name the mix
 * @param arrivals its paths, in the order of the mix
 * @param pairs each two of them
 */
public record MixBudget(String name, List<MixArrival> arrivals, List<MixPair> pairs) {
  private static final Set<Compensation> KNOWN = Set.of(Compensation.YES);
  private static final Set<Compensation> ALL = Set.of(Compensation.YES, Compensation.UNKNOWN);

  /** Copies the lists. */
  public MixBudget {
    arrivals = List.copyOf(arrivals);
    pairs = List.copyOf(pairs);
  }

  /** A mix of the chain. */
  public static MixBudget of(Chain chain, Mix mix) {
    return new MixBudget(mix.name(), arrivals(chain, mix), pairs(chain, mix.entries()));
  }

  /** The paths of a mix, in its order, as they arrive there. */
  static List<MixArrival> arrivals(Chain chain, Mix mix) {
    List<PathBudget> paths =
        mix.entries().stream()
            .map(entry -> ChainBudget.of(chain, chain.path(entry.path())))
            .toList();
    return paths.stream()
        .map(
            path ->
                new MixArrival(
                    path, added(chain, paths, path, KNOWN), added(chain, paths, path, ALL)))
        .toList();
  }

  /** Only those of its paths, and of its pairs, that are named. */
  public MixBudget among(Set<String> paths) {
    return new MixBudget(
        name,
        arrivals.stream().filter(arrival -> paths.contains(arrival.path().name())).toList(),
        pairs.stream()
            .filter(pair -> paths.contains(pair.first().path()))
            .filter(pair -> paths.contains(pair.second().path()))
            .toList());
  }

  /** The desk brings the compensated part of each path up to the longest there is. */
  private static Latency added(
      Chain chain, List<PathBudget> paths, PathBudget path, Set<Compensation> compensated) {
    double longest =
        paths.stream().mapToDouble(p -> compensated(chain, p, compensated)).max().orElse(0);
    return new Latency(longest - compensated(chain, path, compensated), chain.rate());
  }

  private static double compensated(Chain chain, PathBudget path, Set<Compensation> compensated) {
    return path.stages().stream()
        .filter(stage -> compensated.contains(chain.stages().get(stage.name()).compensated()))
        .mapToDouble(stage -> stage.delay().samples())
        .sum();
  }

  private static List<MixPair> pairs(Chain chain, List<MixEntry> entries) {
    List<MixPair> pairs = new ArrayList<>();
    for (int i = 0; i < entries.size(); i++) {
      for (int j = i + 1; j < entries.size(); j++) {
        pairs.add(MixPair.of(chain, entries.get(i), entries.get(j)));
      }
    }
    return pairs;
  }
}
