package dev.loopgauge.verify;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.StageDelay;

/**
 * What a chain file explains of a measured series.
 *
 * @param path the path
 * @param statedBlocks how many blocks its loop's stages state
 * @param statedSamples the delay that its other stages state, in samples at the rate of the series
 * @param toleranceSamples how far off these may be either way: their tolerances, the scatter of the
 *     readings, and what is allowed besides
 * @param unstatedSamples the rest of the fixed part, which nobody stated; negative where more is
 *     stated than there is
 */
public record FixedSplit(
    String path,
    double statedBlocks,
    double statedSamples,
    double toleranceSamples,
    double unstatedSamples) {
  /**
   * Splits the fixed part of a series.
   *
   * @param path a path of the chain, whose loop was read
   * @param allowSamples what may be missing from the chain file's own tolerances
   */
  public static FixedSplit of(SeriesFit fit, Chain chain, ChainPath path, double allowSamples) {
    Chain atRate = chain.withSampleRate(fit.fixed().rate());
    PathBudget budget = ChainBudget.of(atRate, path);
    double blocks = 0;
    double stated = 0;
    for (StageDelay stage : budget.loopStages()) {
      if (atRate.stages().get(stage.name()).delay() instanceof Delay.Blocks counted) {
        blocks += counted.count();
      } else {
        stated += stage.delay().samples();
      }
    }
    return new FixedSplit(
        path.name(),
        blocks,
        stated,
        budget.loopToleranceSamples() + fit.worstSamples() + allowSamples,
        fit.fixed().samples() - stated);
  }

  /** Whether the stages explain the fixed part. */
  public boolean isExplained() {
    return Math.abs(unstatedSamples) <= toleranceSamples;
  }
}
