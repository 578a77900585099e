package dev.loopgauge.verify;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
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
   * when none would. Only where none does so by the figures themselves, the tolerances of the
   * stages that came or went count.
   *
   * @param chain the rig as it was stated at the earlier measurement
   * @param later how much later the second measurement is than the first
   * @param uncertaintySamples the expanded uncertainty of that, k = 2, in samples
   */
  public static List<Explanation> likely(
      Chain chain, ChainPath path, Latency later, double uncertaintySamples) {
    return likely(chain, path, later, uncertaintySamples, KnownFacts.NONE);
  }

  /** The same with what is known of the rig at the second measurement. */
  public static List<Explanation> likely(
      Chain chain, ChainPath path, Latency later, double uncertaintySamples, KnownFacts facts) {
    double before = ChainBudget.of(chain, path).loop().seconds();
    Latency after = Latency.ofSeconds(before, later.rate()).plus(later);
    ExplanationSearch.Reading reading =
        new ExplanationSearch.Reading(after, uncertaintySamples, ROUNDING_SAMPLES);
    List<Explanation> exact =
        new ExplanationSearch(reading, chain, path, facts, change -> 0).explanations();
    return exact.isEmpty()
        ? new ExplanationSearch(
                reading, chain, path, facts, change -> change.toleranceSamples(later.rate()))
            .explanations()
        : exact;
  }
}
