package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Host;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the trade advises for an in-ear path that is over its limit: take the feed from before the
 * host, by a second patch of the same input.
 *
 * @param path the path as it is
 * @param delay how late it would be without the host
 * @param spared the stages it would no longer pass, at least one
 */
public record EarlierFeed(PathBudget path, Latency delay, List<StageDelay> spared) {
  /** Copies the list. */
  public EarlierFeed {
    spared = List.copyOf(spared);
  }

  /** The advice for a path of the chain: none unless it is in-ear, over, and in the host. */
  public static Optional<EarlierFeed> of(Chain chain, PathBudget path) {
    ChainPath written = chain.path(path.name());
    Host host = Host.on(chain, written);
    if (path.listener() != Listener.IN_EAR
        || path.standing() != Standing.OVER
        || host.inside().isEmpty()) {
      return Optional.empty();
    }
    int start = host.before().size();
    int end = start + host.inside().size();
    List<StageDelay> spared = path.stages().subList(start, end);
    List<StageDelay> left = new ArrayList<>(path.stages());
    left.subList(start, end).clear();
    double samples = left.stream().mapToDouble(stage -> stage.delay().samples()).sum();
    return Optional.of(new EarlierFeed(path, new Latency(samples, chain.rate()), spared));
  }

  /** How its listener would stand. */
  public Standing standing() {
    return path.limits().standing(delay.ms());
  }
}
