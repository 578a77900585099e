package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A setting at which every listener is within limits, and how each path runs for that.
 *
 * @param setting the block size and sample rate
 * @param feeds each path of the chain, in its order
 */
public record Choice(Setting setting, List<Feed> feeds) {
  /** Copies the list. */
  public Choice {
    feeds = List.copyOf(feeds);
  }

  /** The paths that must be taken from before the host. */
  public List<String> beforeHost() {
    return feeds.stream()
        .filter(feed -> feed.routing() == Routing.BEFORE_HOST)
        .map(Feed::path)
        .toList();
  }

  /** The inputs that need a second patch for that, and for whom, in the order of the chain. */
  public List<DoublePatch> doublePatches(Chain chain) {
    Map<String, List<String>> byInput = new LinkedHashMap<>();
    for (String path : beforeHost()) {
      byInput.computeIfAbsent(chain.path(path).input(), input -> new ArrayList<>()).add(path);
    }
    return byInput.entrySet().stream()
        .map(entry -> new DoublePatch(entry.getKey(), entry.getValue()))
        .toList();
  }

  /** How far sound and picture are apart where they are furthest, in ms, before any is delayed. */
  public double pictureApartMs() {
    return feeds.stream().mapToDouble(Feed::pictureApartMs).max().orElse(0);
  }
}
