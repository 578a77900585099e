package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.signal.Latency;
import java.util.Map;

/**
 * Tells how late the paths of a chain are. A measurement runs through the loop of a path only; what
 * the loop leaves out, such as air, is predicted and added.
 */
@FunctionalInterface
public interface PathDelays {
  /**
   * How late a path of the chain is.
   *
   * @throws IllegalArgumentException when the path is not of this chain
   */
  SourcedDelay of(Chain chain, ChainPath path);

  /** All from the chain file. */
  static PathDelays predicted() {
    return (chain, path) -> new SourcedDelay(ChainBudget.delay(chain, path), DelaySource.PREDICTED);
  }

  /**
   * From measurements where there are any, else from the chain file.
   *
   * @param loops the measured delay of a path's loop, at any sample rate, by the path's name
   */
  static PathDelays measured(Map<String, Latency> loops) {
    Map<String, Latency> known = Map.copyOf(loops);
    return (chain, path) -> {
      Latency loop = known.get(path.name());
      return loop == null
          ? predicted().of(chain, path)
          : around(Latency.ofSeconds(loop.seconds(), chain.rate()), ChainBudget.of(chain, path));
    };
  }

  /**
   * From fits over block sizes where they hold, else from the chain file. A fit holds at the sample
   * rate it was measured at.
   *
   * @param fits the fit of a path's loop, by the path's name
   */
  static PathDelays fitted(Map<String, BlockFit> fits) {
    Map<String, BlockFit> known = Map.copyOf(fits);
    return (chain, path) -> {
      BlockFit fit = known.get(path.name());
      return fit == null || !fit.rate().equals(chain.rate())
          ? predicted().of(chain, path)
          : around(fit.loop(chain.blockSize()), ChainBudget.of(chain, path));
    };
  }

  private static SourcedDelay around(Latency loop, PathBudget budget) {
    return new SourcedDelay(loop.plus(budget.delay().minus(budget.loop())), DelaySource.MEASURED);
  }
}
