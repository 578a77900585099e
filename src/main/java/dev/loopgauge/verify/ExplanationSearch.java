package dev.loopgauge.verify;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.HostChange;
import dev.loopgauge.chain.RigChange;
import dev.loopgauge.chain.StageChange;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * Searches for what may be different at a rig whose loop is earlier or later than stated: each
 * single change that the chain allows, and two together where none fits, or where none fits as well
 * as two do.
 *
 * <p>A change fits when the measurement lies within tolerance, allowance and uncertainty of the
 * loop so changed, and nearer to it than to the loop as stated. Those that fit are ranked by half
 * the square of what they leave unexplained, in standard uncertainties (the negative logarithm of a
 * normal likelihood), plus the cost of {@link Plausibility}. What is known for sure is not tried
 * otherwise.
 */
final class ExplanationSearch {
  /** With more single changes than this, pairs would take longer than people wait. */
  private static final int MOST_TO_PAIR = 250;

  private static final int MOST_PAIRS = 5;

  private static final String TOGETHER = "Two changes at once fit better than one: ";

  /**
   * What was read.
   *
   * @param delay the delay
   * @param uncertaintySamples its expanded uncertainty, k = 2
   * @param allowSamples how much more is allowed
   */
  record Reading(Latency delay, double uncertaintySamples, double allowSamples) {}

  private final Reading reading;
  private final Hypothesis asStated;
  private final KnownFacts facts;
  private final ToDoubleFunction<Hypothesis> tolerance;

  /**
   * For a loop that was read so late.
   *
   * @param tolerance how far off a hypothesis may be either way, in samples at the reading's rate
   */
  ExplanationSearch(
      Reading reading,
      Chain chain,
      ChainPath path,
      KnownFacts facts,
      ToDoubleFunction<Hypothesis> tolerance) {
    this.reading = reading;
    this.asStated = Hypothesis.nothing(chain.only(path));
    this.facts = facts;
    this.tolerance = tolerance;
  }

  /** The same in words, the likeliest first. */
  List<Explanation> explanations() {
    return explanations(fitting());
  }

  List<Explanation> explanations(List<Hypothesis> fitting) {
    return explanations(fitting, best(fitting));
  }

  /**
   * The same with one cause more, which explains any difference up to a reach as well as any other,
   * and is known to be there. Of a normal likelihood such a cause has what is left when it is
   * spread evenly over the reach.
   *
   * @param reach how far it may move the loop, in samples, above 0
   * @param fitting the others, the likeliest first
   * @param cause the cause
   */
  List<Explanation> explanationsWithin(double reach, List<Hypothesis> fitting, Explanation cause) {
    double evenly = Math.log(reach / (standardUncertainty(asStated) * Math.sqrt(2 * Math.PI)));
    double best = Math.min(evenly, best(fitting));
    List<Explanation> found = new ArrayList<>(explanations(fitting, best));
    int likelier =
        (int) fitting.stream().takeWhile(hypothesis -> score(hypothesis) <= evenly).count();
    found.add(likelier, cause.costing(evenly - best));
    return found;
  }

  private double best(List<Hypothesis> fitting) {
    return fitting.stream().mapToDouble(this::score).min().orElse(Double.POSITIVE_INFINITY);
  }

  private List<Explanation> explanations(List<Hypothesis> fitting, double best) {
    boolean oneFits = fitting.stream().anyMatch(hypothesis -> hypothesis.changes().size() == 1);
    return fitting.stream()
        .map(
            hypothesis ->
                new Explanation(
                    hypothesis.cause(),
                    (oneFits && hypothesis.changes().size() > 1 ? TOGETHER : "")
                        + hypothesis.text(),
                    hypothesis.predictedSamples(reading.delay().rate()),
                    residual(hypothesis),
                    score(hypothesis) - best))
        .toList();
  }

  /** What fits, the likeliest first: all single changes, and the likeliest pairs where due. */
  List<Hypothesis> fitting() {
    List<Change> changes =
        SingleChanges.of(asStated.found()).stream().filter(c -> !facts.refute(c)).toList();
    List<Hypothesis> singles = new ArrayList<>();
    changes.forEach(change -> singles.add(asStated.and(change)));
    List<Hypothesis> fitting = ranked(withDistances(asStated, new ArrayList<>(singles)));
    double best = fitting.isEmpty() ? Double.POSITIVE_INFINITY : score(fitting.get(0));
    if (best <= Plausibility.LEAST_OF_TWO || changes.size() > MOST_TO_PAIR) {
      return fitting;
    }
    List<Hypothesis> better =
        pairs(changes, singles).stream().filter(pair -> score(pair) < best).toList();
    return Stream.concat(better.stream().limit(MOST_PAIRS), fitting.stream()).toList();
  }

  private List<Hypothesis> pairs(List<Change> changes, List<Hypothesis> singles) {
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
    return ranked(pairs);
  }

  private List<Hypothesis> withDistances(Hypothesis first, List<Hypothesis> others) {
    double missingSeconds = residual(first) / reading.delay().rate().hertz();
    SingleChanges.distances(first.found(), missingSeconds)
        .forEach(distance -> others.add(first.and(distance)));
    return others;
  }

  private static boolean goTogether(Change a, Change b) {
    if (a instanceof StageChange one && b instanceof StageChange other) {
      return !one.stage().equals(other.stage());
    }
    return !(a instanceof RigChange && a.getClass().equals(b.getClass()))
        && !(a instanceof HostChange && a.getClass().equals(b.getClass()));
  }

  private List<Hypothesis> ranked(List<Hypothesis> hypotheses) {
    return hypotheses.stream()
        .filter(this::fits)
        .sorted(Comparator.comparingDouble(this::score))
        .toList();
  }

  /** What a hypothesis leaves unexplained, measured less predicted, in samples. */
  double residual(Hypothesis hypothesis) {
    return reading.delay().samples() - hypothesis.predictedSamples(reading.delay().rate());
  }

  private boolean fits(Hypothesis hypothesis) {
    double residual = Math.abs(residual(hypothesis));
    return residual <= limit(hypothesis) + reading.uncertaintySamples()
        && residual < Math.abs(residual(asStated));
  }

  private double limit(Hypothesis hypothesis) {
    return tolerance.applyAsDouble(hypothesis) + reading.allowSamples();
  }

  private double score(Hypothesis hypothesis) {
    double inUncertainties = residual(hypothesis) / standardUncertainty(hypothesis);
    double cost = hypothesis.changes().stream().mapToDouble(Plausibility::cost).sum();
    double more = Plausibility.SECOND_CHANGE * Math.max(0, hypothesis.changes().size() - 1);
    return inUncertainties * inUncertainties / 2 + cost + more;
  }

  /** Of measured less predicted; limits count as rectangular (JCGM 100:2008, 4.3.7). */
  private double standardUncertainty(Hypothesis hypothesis) {
    return Math.hypot(
        reading.uncertaintySamples() / Measurement.COVERAGE_FACTOR,
        limit(hypothesis) / Math.sqrt(3));
  }
}
