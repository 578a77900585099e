package dev.loopgauge.job.live;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Patch;
import dev.loopgauge.measure.ChannelPair;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Where a chain file says that its paths and the reference are plugged in. */
record ChainPatching(Chain chain) {
  /** From this channel on the built-in rig is plugged in where nothing is said. */
  private static final int FIRST = 2;

  /** The send and the return of a path, where it says them. */
  static Optional<ChannelPair> of(ChainPath path) {
    return path.patch().map(ChainPatching::pair);
  }

  /** The cable that is the reference of the whole file. */
  Optional<ChannelPair> reference() {
    return chain.reference().map(ChainPatching::pair);
  }

  /**
   * What a path is measured against: the return that its patch names for it, with the send that
   * feeds that return; else the reference of the whole file.
   */
  Optional<ChannelPair> reference(ChainPath path) {
    return path.patch().filter(patch -> patch.against().isPresent()).isPresent()
        ? path.patch().map(this::against)
        : reference();
  }

  /** A return that nothing feeds by the file hears the path's own send, split. */
  private ChannelPair against(Patch patch) {
    int returned = patch.against().orElseThrow();
    int send =
        plugged()
            .filter(other -> other.returned() == returned)
            .mapToInt(Patch::send)
            .findFirst()
            .orElse(patch.send());
    return new ChannelPair(send, returned);
  }

  /** What to say where a path is measured on other channels than its patch names. */
  Optional<String> elsewhere(ChainPath path, ChannelPair used) {
    return of(path)
        .filter(own -> !own.equals(used))
        .map(
            own ->
                "the chain file has '%s' on send %d and return %d, not on %d and %d%s"
                    .formatted(
                        path.name(), own.send(), own.ret(), used.send(), used.ret(), whose(used)));
  }

  private String whose(ChannelPair used) {
    for (ChainPath path : chain.paths().values()) {
      if (of(path).filter(used::equals).isPresent()) {
        return ", where it has '" + path.name() + "'";
      }
    }
    return "";
  }

  /** The lowest channel that nothing of the file uses, 2 or above. */
  ChannelPair free() {
    int channel =
        IntStream.rangeClosed(FIRST, Patch.HIGHEST)
            .filter(
                number -> plugged().noneMatch(p -> p.send() == number || p.returned() == number))
            .findFirst()
            .orElse(FIRST);
    return new ChannelPair(channel, channel);
  }

  /** Whether nothing of the file comes back on a return. */
  boolean isFree(int returned) {
    return plugged().noneMatch(patch -> patch.returned() == returned);
  }

  private Stream<Patch> plugged() {
    return Stream.concat(
        chain.reference().stream(),
        chain.paths().values().stream().flatMap(path -> path.patch().stream()));
  }

  private static ChannelPair pair(Patch patch) {
    return new ChannelPair(patch.send(), patch.returned());
  }
}
