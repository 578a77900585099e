package dev.loopgauge.job.live;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.estimate.LiveTracker;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.setup.Profile;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The paths of a chain file that are watched, and where.
 *
 * @param paths those with a patch and a reference, in the order of the file
 * @param returns the channels that are recorded, counted from 1
 * @param pairs where each path's reference and return are among them
 * @param unwatched the names of the others
 */
record WatchedPaths(
    List<ChainPath> paths,
    List<Integer> returns,
    List<LiveTracker.Pair> pairs,
    List<String> unwatched) {
  /** Delays may grow by so much beyond the longest of the file, in seconds. */
  private static final double MORE_SECONDS = 0.5;

  /**
   * Those of a file.
   *
   * @throws UsageException when no path can be watched
   */
  static WatchedPaths of(Chain chain, DeviceChoice device, Optional<Profile> kept) {
    Optional<ChannelPair> common = device.reference(kept, chain);
    ChainPatching patching = new ChainPatching(chain);
    List<ChainPath> paths = new ArrayList<>();
    List<ChannelPair> plugs = new ArrayList<>();
    List<String> unwatched = new ArrayList<>();
    Set<Integer> returns = new LinkedHashSet<>();
    for (ChainPath path : chain.paths().values()) {
      Optional<ChannelPair> own = ChainPatching.of(path);
      Optional<ChannelPair> reference =
          own.isPresent() && path.patch().orElseThrow().against().isPresent()
              ? patching.reference(path)
              : common;
      if (own.isEmpty() || reference.isEmpty()) {
        unwatched.add(path.name());
        continue;
      }
      paths.add(path);
      plugs.add(new ChannelPair(reference.get().ret(), own.get().ret()));
      returns.add(reference.get().ret());
      returns.add(own.get().ret());
    }
    if (paths.isEmpty()) {
      throw new UsageException(
          "no path says both where it comes back and what it is compared with",
          "add reference: { send: 1, return: 1 } to the file and patch: { send: 2, return: 2 } to"
              + " each path");
    }
    List<Integer> channels = List.copyOf(returns);
    return new WatchedPaths(
        paths,
        channels,
        plugs.stream()
            .map(
                plug ->
                    new LiveTracker.Pair(
                        channels.indexOf(plug.send()), channels.indexOf(plug.ret())))
            .toList(),
        unwatched);
  }

  /** How far to look for a delay, in seconds. */
  double maxDelaySeconds(Chain chain) {
    double longest = 0;
    for (ChainPath path : paths) {
      longest = Math.max(longest, ChainBudget.of(chain, path).loop().seconds());
    }
    return longest + MORE_SECONDS;
  }

  /** The returns in words. */
  String told() {
    return (paths.size() == 1 ? "1 path" : paths.size() + " paths")
        + " on returns "
        + returns.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }
}
