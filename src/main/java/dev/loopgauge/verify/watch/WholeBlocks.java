package dev.loopgauge.verify.watch;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.HostSettings;
import dev.loopgauge.chain.Stage;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A change as a number of whole blocks of one of the hosts that a path passes.
 *
 * @param host the host's name; empty for the rig's own
 * @param blockSize its block, in samples of its own rate
 * @param blocks how many, not 0; negative for less delay
 */
public record WholeBlocks(Optional<String> host, int blockSize, int blocks) {
  /** A whole number of blocks is off by rounding alone, in samples. */
  private static final double ROUNDING = 0.5;

  /** The hosts that it fits, in the order of the path. */
  public static List<WholeBlocks> of(Latency change, Chain chain, ChainPath path) {
    Set<Optional<String>> hosts = new LinkedHashSet<>();
    for (String name : path.stages()) {
      Stage stage = chain.stages().get(name);
      if (stage.host().isPresent() || stage.delay() instanceof Delay.Blocks) {
        hosts.add(stage.host());
      }
    }
    List<WholeBlocks> found = new ArrayList<>();
    for (Optional<String> host : hosts) {
      of(change, chain, host).ifPresent(found::add);
    }
    return found;
  }

  private static Optional<WholeBlocks> of(Latency change, Chain chain, Optional<String> host) {
    Optional<HostSettings> settings = host.map(chain.hosts()::get);
    int size = chain.blockSize();
    double hertz = chain.rate().hertz();
    if (settings.isPresent()) {
      size = settings.get().blockSize().orElse(size);
      hertz = settings.get().rate().orElse(chain.rate()).hertz();
    }
    double samples = change.seconds() * hertz;
    int blocks = (int) Math.rint(samples / size);
    return blocks != 0 && Math.abs(samples - (double) blocks * size) <= ROUNDING
        ? Optional.of(new WholeBlocks(host, size, blocks))
        : Optional.empty();
  }
}
