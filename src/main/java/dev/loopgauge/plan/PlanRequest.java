package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * What a plan may choose from.
 *
 * @param chain the rig
 * @param blockSizes the block sizes that the host offers, smallest first; sorted if they are not
 * @param rates the sample rates that the rig can run at; the chain's own where none is named
 * @param mayLeaveHost the paths that could be fed from before the host
 * @param rule what sound is judged by against its picture
 * @param delays how late paths are that run as the chain file has them
 * @param loads what is known of the computer at some settings
 */
public record PlanRequest(
    Chain chain,
    List<Integer> blockSizes,
    List<SampleRate> rates,
    Set<String> mayLeaveHost,
    PictureRule rule,
    PathDelays delays,
    Map<Setting, Load> loads) {
  /**
   * Copies all, sorts the sizes, and checks that the paths exist.
   *
   * @throws dev.loopgauge.chain.UnknownPathException when a path is not of the chain
   */
  public PlanRequest {
    blockSizes = List.copyOf(new TreeSet<>(blockSizes));
    rates = rates.isEmpty() ? List.of(chain.rate()) : rates.stream().distinct().toList();
    mayLeaveHost = Set.copyOf(mayLeaveHost);
    loads = Map.copyOf(loads);
    mayLeaveHost.forEach(chain::path);
  }
}
