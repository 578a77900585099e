package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.Compensation;
import dev.loopgauge.chain.MixEntry;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Two paths that are heard together.
 *
 * <p>A stage that the desk compensates delays the mix's other paths too, so it sets nobody apart.
 *
 * @param first the path that comes first, if none of the unknown stages is compensated
 * @param second the path that comes with it or later
 * @param toleranceSamples how far off their difference may be either way, in samples
 * @param unknown the stages that set them apart unless the desk compensates them, which is unknown
 * @param outcomes how they meet: if none of the unknown stages is compensated, if each alone is,
 *     and if all are; just one where nothing is unknown
 */
public record MixPair(
    MixEntry first,
    MixEntry second,
    double toleranceSamples,
    List<String> unknown,
    List<MixOutcome> outcomes) {
  /** Keeps arithmetic rounding from setting two paths apart that meet exactly, in samples. */
  private static final double ROUNDING_SAMPLES = 1e-6;

  /** Copies the lists. */
  public MixPair {
    unknown = List.copyOf(unknown);
    outcomes = List.copyOf(outcomes);
  }

  /** Two paths of a chain, by their predicted delays. */
  static MixPair of(Chain chain, MixEntry one, MixEntry other) {
    MixPair pair = inOrder(chain, one, other);
    return pair.outcomes().get(0).secondLater().samples() < 0 ? inOrder(chain, other, one) : pair;
  }

  private static MixPair inOrder(Chain chain, MixEntry first, MixEntry second) {
    PathBudget one = ChainBudget.of(chain, chain.path(first.path()));
    PathBudget other = ChainBudget.of(chain, chain.path(second.path()));
    StageDifference whole = StageDifference.between(one, other);
    StageDifference loop = StageDifference.between(one.loopStages(), other.loopStages());
    Set<String> unknown = unknown(chain, whole);
    List<MixOutcome> outcomes = new ArrayList<>();
    for (Set<String> compensated : guesses(unknown)) {
      Latency apart = apart(chain, whole, compensated);
      outcomes.add(
          new MixOutcome(
              List.copyOf(compensated),
              apart,
              apart(chain, loop, compensated),
              overlap(apart, whole.toleranceSamples(), second.levelDb() - first.levelDb())));
    }
    return new MixPair(first, second, whole.toleranceSamples(), List.copyOf(unknown), outcomes);
  }

  private static Set<String> unknown(Chain chain, StageDifference difference) {
    Set<String> names = new LinkedHashSet<>();
    Stream.concat(difference.added().stream(), difference.spared().stream())
        .filter(stage -> compensation(chain, stage) == Compensation.UNKNOWN)
        .filter(stage -> stage.delay().samples() > 0)
        .forEach(stage -> names.add(stage.name()));
    return names;
  }

  private static List<Set<String>> guesses(Set<String> unknown) {
    Set<Set<String>> guesses = new LinkedHashSet<>();
    guesses.add(Set.of());
    unknown.forEach(stage -> guesses.add(Set.of(stage)));
    guesses.add(unknown);
    return List.copyOf(guesses);
  }

  private static Latency apart(Chain chain, StageDifference stages, Set<String> compensated) {
    double samples =
        stages.samples(
            stage ->
                compensation(chain, stage) != Compensation.YES
                    && !compensated.contains(stage.name()));
    return new Latency(Math.abs(samples) < ROUNDING_SAMPLES ? 0 : samples, chain.rate());
  }

  private static Compensation compensation(Chain chain, StageDelay stage) {
    return chain.stages().get(stage.name()).compensated();
  }

  private static Overlap overlap(Latency secondLater, double toleranceSamples, double secondDb) {
    return new Overlap(
        Math.abs(secondLater.ms()),
        new Latency(toleranceSamples, secondLater.rate()).ms(),
        secondLater.samples() < 0 ? -secondDb : secondDb);
  }
}
