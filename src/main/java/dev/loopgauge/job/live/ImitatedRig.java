package dev.loopgauge.job.live;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Patch;
import java.util.List;
import java.util.Optional;

/**
 * What the built-in rig imitates: all paths of a chain file that say where they are plugged in, and
 * the one that is measured.
 *
 * @param measured the path that is measured; empty where all are
 * @param named where it is plugged in where the file doesn't say
 * @param faults what is wrong, as {@code --fault} takes them
 * @param seed of its noise
 */
public record ImitatedRig(
    Chain chain,
    Optional<ChainPath> measured,
    Optional<Patch> named,
    List<String> faults,
    long seed) {
  /** Copies the faults. */
  public ImitatedRig {
    faults = List.copyOf(faults);
  }
}
