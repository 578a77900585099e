package dev.loopgauge.plan;

import dev.loopgauge.signal.Latency;
import java.util.List;

/**
 * How two paths of a mix meet, if the desk compensates certain stages.
 *
 * @param compensated the names of those stages of which it is unknown that are taken as compensated
 * @param secondLater how much later the second path is; negative when earlier
 * @param loopSecondLater the same between their loops: what two patched measurements would show
 * @param overlap the two as they are heard
 */
public record MixOutcome(
    List<String> compensated, Latency secondLater, Latency loopSecondLater, Overlap overlap) {
  /** Copies the list. */
  public MixOutcome {
    compensated = List.copyOf(compensated);
  }
}
