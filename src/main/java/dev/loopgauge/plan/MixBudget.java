package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Compensation;
import dev.loopgauge.chain.Hearing;
import dev.loopgauge.chain.Mix;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * How the paths of a mix are predicted to meet.
 *
 * @param name the mix
 * @param arrivals its paths, in the order of the mix
 * @param pairs those that are heard together and carry the same input, two and two
 * @param leftOut how many more pairs there are, left out since they tell no more: see {@link
 *     MixPairs}
 */
public record MixBudget(String name, List<MixArrival> arrivals, List<MixPair> pairs, int leftOut) {
  private static final Set<Compensation> KNOWN = Set.of(Compensation.YES);
  private static final Set<Compensation> ALL = Set.of(Compensation.YES, Compensation.UNKNOWN);

  /** Copies the lists. */
  public MixBudget {
    arrivals = List.copyOf(arrivals);
    pairs = List.copyOf(pairs);
  }

  /** A mix of the chain. */
  public static MixBudget of(Chain chain, Mix mix) {
    MixPairs pairs = MixPairs.of(chain, mix);
    return new MixBudget(mix.name(), arrivals(chain, mix), pairs.pairs(), pairs.leftOut());
  }

  /** The paths of a mix, in its order, as they arrive there. */
  static List<MixArrival> arrivals(Chain chain, Mix mix) {
    List<PathBudget> paths = new ArrayList<>();
    for (Feeding feeding : Feeding.of(chain, mix)) {
      paths.add(feeding.budget());
    }
    Map<String, Latency> known = added(chain, paths, KNOWN);
    Map<String, Latency> all = added(chain, paths, ALL);
    Hearing heard = hearing(chain, paths, known);
    Hearing heardIfAll = hearing(chain, paths, all);
    List<MixArrival> arrivals = new ArrayList<>();
    for (PathBudget path : paths) {
      arrivals.add(
          new MixArrival(
              path,
              known.get(path.name()),
              all.get(path.name()),
              heard.judged(chain.path(path.name())),
              heardIfAll.judged(chain.path(path.name()))));
    }
    return arrivals;
  }

  private static Hearing hearing(Chain chain, List<PathBudget> paths, Map<String, Latency> added) {
    Map<String, Latency> delays = new HashMap<>();
    for (PathBudget path : paths) {
      delays.put(path.name(), path.delay().plus(added.get(path.name())));
    }
    return Hearing.of(chain, delays);
  }

  /** Only those of its paths, and of its pairs, that are named. */
  public MixBudget among(Set<String> paths) {
    List<MixArrival> named = new ArrayList<>();
    for (MixArrival arrival : arrivals) {
      if (paths.contains(arrival.path().name())) {
        named.add(arrival);
      }
    }
    List<MixPair> together = new ArrayList<>();
    for (MixPair pair : pairs) {
      if (paths.contains(pair.first().path()) && paths.contains(pair.second().path())) {
        together.add(pair);
      }
    }
    return new MixBudget(name, named, together, leftOut);
  }

  /** The desk brings the compensated part of each path up to the longest there is. */
  private static Map<String, Latency> added(
      Chain chain, List<PathBudget> paths, Set<Compensation> compensated) {
    double longest = 0;
    for (PathBudget path : paths) {
      longest = Math.max(longest, compensated(chain, path, compensated));
    }
    Map<String, Latency> added = new HashMap<>();
    for (PathBudget path : paths) {
      double part = compensated(chain, path, compensated);
      added.put(path.name(), new Latency(longest - part, chain.rate()));
    }
    return added;
  }

  private static double compensated(Chain chain, PathBudget path, Set<Compensation> compensated) {
    double samples = 0;
    for (StageDelay stage : path.stages()) {
      if (compensated.contains(chain.stages().get(stage.name()).compensated())) {
        samples += stage.delay().samples();
      }
    }
    return samples;
  }
}
