package dev.loopgauge.plan;

import dev.loopgauge.chain.Judged;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.signal.Latency;

/**
 * A path in a mix, and what the desk adds to it there.
 *
 * @param path the budget of the path by itself
 * @param added what the desk delays it by, to match the compensated stages of the mix's other paths
 * @param addedIfAll the same, if the desk compensated all stages of which it is unknown, too
 * @param judged what its listener's limits are applied to in the mix, for all that is known
 * @param judgedIfAll the same, if the desk compensated all unknown stages too
 */
public record MixArrival(
    PathBudget path, Latency added, Latency addedIfAll, Judged judged, Judged judgedIfAll) {
  /** How late it is in the mix, for all that is known. */
  public Latency delay() {
    return path.delay().plus(added);
  }

  /** How late it is in the mix, if the desk compensated all unknown stages too. */
  public Latency delayIfAll() {
    return path.delay().plus(addedIfAll);
  }

  /** How its listener stands in the mix, for all that is known. */
  public Standing standing() {
    return path.limits().standing(judged.ms());
  }

  /** How its listener stands in the mix, if the desk compensated all unknown stages too. */
  public Standing standingIfAll() {
    return path.limits().standing(judgedIfAll.ms());
  }
}
