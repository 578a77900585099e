package dev.loopgauge.plan;

import java.util.List;

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

  /** How far sound and picture are apart where they are furthest, in ms, before any is delayed. */
  public double pictureApartMs() {
    return feeds.stream().mapToDouble(Feed::pictureApartMs).max().orElse(0);
  }
}
