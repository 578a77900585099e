package dev.loopgauge.verify;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.RigChange;
import dev.loopgauge.chain.StageChange;
import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Searches for what may be different at a rig whose loop is earlier or later than stated: each
 * single change that the chain allows, and where none fits, two together.
 *
 * <p>A change fits when the measurement lies within tolerance, allowance and uncertainty of the
 * loop so changed, and nearer to it than to the loop as stated. Those that fit are ranked by half
 * the square of what they leave unexplained, in standard uncertainties (the negative logarithm of a
 * normal likelihood), plus the cost of {@link Plausibility}.
 */
final class ExplanationSearch {
  /** With more single changes than this, pairs would take longer than people wait. */
  private static final int MOST_TO_PAIR = 250;

  private static final int MOST_PAIRS = 5;

  private final Latency measured;
  private final double uncertaintySamples;
  private final double allowSamples;
  private final Hypothesis asStated;

  ExplanationSearch(Measurement measured, Chain chain, ChainPath path, double allowSamples) {
    this(measured.delay(), measured.uncertaintySamples(), chain, path, allowSamples);
  }

  /** For a loop that is so late, with this expanded uncertainty (k = 2) in samples. */
  ExplanationSearch(
      Latency measured,
      double uncertaintySamples,
      Chain chain,
      ChainPath path,
      double allowSamples) {
    this.measured = measured;
    this.uncertaintySamples = uncertaintySamples;
    this.allowSamples = allowSamples;
    this.asStated = Hypothesis.nothing(chain.only(path));
  }

  /** What fits, the likeliest first; all single changes, or else the likeliest pairs. */
  List<Hypothesis> fitting() {
    List<Change> changes = SingleChanges.of(asStated.found());
    List<Hypothesis> singles = new ArrayList<>();
    changes.forEach(change -> singles.add(asStated.and(change)));
    List<Hypothesis> fitting = ranked(withDistances(asStated, singles));
    if (!fitting.isEmpty() || changes.size() > MOST_TO_PAIR) {
      return fitting;
    }
    List<Hypothesis> pairs = new ArrayList<>();
    for (int i = 0; i < changes.size(); i++) {
      Hypothesis first = singles.get(i);
      List<Hypothesis> both = new ArrayList<>();
      for (Change second : changes.subList(i + 1, changes.size())) {
        if (goTogether(changes.get(i), second)) {
          both.add(first.and(second));
        }
      }
      pairs.addAll(withDistances(first, both));
    }
    return ranked(pairs).stream().limit(MOST_PAIRS).toList();
  }

  private List<Hypothesis> withDistances(Hypothesis first, List<Hypothesis> others) {
    double missingSeconds = residual(first) / measured.rate().hertz();
    SingleChanges.distances(first.found(), missingSeconds)
        .forEach(distance -> others.add(first.and(distance)));
    return others;
  }

  private static boolean goTogether(Change a, Change b) {
    if (a instanceof StageChange one && b instanceof StageChange other) {
      return !one.stage().equals(other.stage());
    }
    return !(a instanceof RigChange && a.getClass().equals(b.getClass()));
  }

  private List<Hypothesis> ranked(List<Hypothesis> hypotheses) {
    return hypotheses.stream()
        .filter(this::fits)
        .sorted(Comparator.comparingDouble(this::score))
        .toList();
  }

  /** What a hypothesis leaves unexplained, measured less predicted, in samples. */
  double residual(Hypothesis hypothesis) {
    return measured.samples() - hypothesis.predictedSamples(measured.rate());
  }

  private boolean fits(Hypothesis hypothesis) {
    double residual = Math.abs(residual(hypothesis));
    return residual <= limit(hypothesis) + uncertaintySamples
        && residual < Math.abs(residual(asStated));
  }

  private double limit(Hypothesis hypothesis) {
    return hypothesis.toleranceSamples(measured.rate()) + allowSamples;
  }

  private double score(Hypothesis hypothesis) {
    double inUncertainties = residual(hypothesis) / standardUncertainty(hypothesis);
    double cost = hypothesis.changes().stream().mapToDouble(Plausibility::cost).sum();
    return inUncertainties * inUncertainties / 2 + cost;
  }

  /**
   * How many of some hypotheses are likelier than a cause that explains any difference up to a
   * reach as well as any other, and is known to be there. Of a normal likelihood such a cause has
   * what is left when it is spread evenly over the reach.
   *
   * @param reach how far it may move the loop, in samples, above 0
   * @param ranked the hypotheses, the likeliest first
   */
  int likelierThanWithin(double reach, List<Hypothesis> ranked) {
    double evenly = Math.log(reach / (standardUncertainty(asStated) * Math.sqrt(2 * Math.PI)));
    return (int) ranked.stream().takeWhile(hypothesis -> score(hypothesis) <= evenly).count();
  }

  /** Of measured less predicted; limits count as rectangular (JCGM 100:2008, 4.3.7). */
  private double standardUncertainty(Hypothesis hypothesis) {
    return Math.hypot(
        uncertaintySamples / Measurement.COVERAGE_FACTOR, limit(hypothesis) / Math.sqrt(3));
  }
}
