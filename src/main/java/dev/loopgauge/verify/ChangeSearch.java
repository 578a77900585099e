package dev.loopgauge.verify;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.Stage;
import dev.loopgauge.signal.Latency;
import java.util.List;

/**
 * Searches for what may have changed at a rig between two measurements of the same path. The
 * earlier one counts as what the chain gives, so that what the chain file's figures are off by
 * cancels.
 */
public final class ChangeSearch {
  /** Chain files state whole samples: half of one is left to rounding (JCGM 100:2008, F.2.2.1). */
  private static final double ROUNDING_SAMPLES = 0.5;

  private ChangeSearch() {}

  /**
   * How far a change may be off and still explain a difference, in samples.
   *
   * @param uncertaintySamples the expanded uncertainty of the difference, k = 2, in samples
   */
  public static double tolerated(double uncertaintySamples) {
    return ROUNDING_SAMPLES + uncertaintySamples;
  }

  /**
   * The changes of the chain that would move the loop of a path so far, the likeliest first; empty
   * when none would. Only where none does so by the figures themselves, their tolerances count: a
   * stage that went may have had them.
   *
   * @param chain the rig as it was stated at the earlier measurement
   * @param later how much later the second measurement is than the first
   * @param uncertaintySamples the expanded uncertainty of that, k = 2, in samples
   */
  public static List<Explanation> likely(
      Chain chain, ChainPath path, Latency later, double uncertaintySamples) {
    List<Explanation> exact = search(withoutTolerances(chain), path, later, uncertaintySamples);
    return exact.isEmpty() ? search(chain, path, later, uncertaintySamples) : exact;
  }

  private static Chain withoutTolerances(Chain chain) {
    Chain exact = chain;
    for (Stage stage : chain.stages().values()) {
      exact = exact.withStage(stage.delayedBy(stage.delay(), new Delay.Samples(0)));
    }
    return exact;
  }

  private static List<Explanation> search(
      Chain chain, ChainPath path, Latency later, double uncertaintySamples) {
    double before = ChainBudget.of(chain, path).loop().seconds();
    Latency after = Latency.ofSeconds(before, later.rate()).plus(later);
    return new ExplanationSearch(after, uncertaintySamples, chain, path, ROUNDING_SAMPLES)
        .fitting().stream().map(fitting -> Explanation.of(fitting, after)).toList();
  }
}
