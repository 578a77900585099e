package dev.loopgauge.job;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.verify.Comparison;
import java.util.Optional;

/**
 * The path that a measurement is compared with.
 *
 * @param chain the chain
 * @param path one of its paths
 * @param allowSamples how far off the budget is let pass, beside tolerance and uncertainty
 */
public record ChosenPath(Chain chain, ChainPath path, double allowSamples) {
  /** How a measurement stands against the path's budget; empty without a number. */
  public Optional<Comparison> compare(Estimate estimate) {
    return estimate instanceof Estimate.Found found
        ? Optional.of(Comparison.of(found, chain, path, allowSamples))
        : Optional.empty();
  }
}
