package dev.loopgauge.job;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.plan.PictureMatch;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.KnownFacts;
import dev.loopgauge.verify.verdict.AspectVerdict;
import dev.loopgauge.verify.verdict.JudgedReading;
import java.util.Optional;

/**
 * The path that a measurement is compared with.
 *
 * @param chain the chain
 * @param path one of its paths
 * @param allowSamples how far off the budget is let pass, beside tolerance and uncertainty
 * @param facts what is known of the rig for sure: causes that it refutes are not named
 */
public record ChosenPath(Chain chain, ChainPath path, double allowSamples, KnownFacts facts) {
  /** A path of a rig of which nothing is known but its chain file. */
  public ChosenPath(Chain chain, ChainPath path, double allowSamples) {
    this(chain, path, allowSamples, KnownFacts.NONE);
  }

  /** How late its loop is by its budget, in seconds. */
  public double loopSeconds() {
    return ChainBudget.of(chain, path).loop().seconds();
  }

  /** The same where some of the rig is known for sure. */
  public ChosenPath knowing(KnownFacts known) {
    return new ChosenPath(chain, path, allowSamples, known);
  }

  /** A reading judged, of a path or of none that is known. */
  public static JudgedReading judge(
      Optional<ChosenPath> chosen, Estimate estimate, Optional<HostCheck> hostCheck) {
    return chosen.isPresent()
        ? chosen.get().judge(estimate, hostCheck)
        : JudgedReading.ofNoPath(estimate, hostCheck);
  }

  /** A reading of the path, judged. */
  public JudgedReading judge(Estimate estimate, Optional<HostCheck> hostCheck) {
    return judge(estimate, compare(estimate), hostCheck);
  }

  /** The same where it was compared before. */
  public JudgedReading judge(
      Estimate estimate, Optional<Comparison> comparison, Optional<HostCheck> hostCheck) {
    return JudgedReading.ofPath(estimate, comparison, hostCheck, path.expected(), picture());
  }

  /** How the path stands against its picture, as predicted. */
  public Optional<AspectVerdict> picture() {
    return PictureMatch.of(chain, path, ChainBudget.of(chain, path).delay(), PictureRule.EBU_R37)
        .map(PictureMatch::verdict);
  }

  /** How a measurement stands against the path's budget; empty without a number. */
  public Optional<Comparison> compare(Estimate estimate) {
    return estimate instanceof Estimate.Found found
        ? Optional.of(Comparison.of(found, chain, path, allowSamples, facts))
        : Optional.empty();
  }
}
