package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Compensation;
import dev.loopgauge.chain.MixEntry;
import dev.loopgauge.chain.Stage;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Two paths that are heard together.
 *
 * <p>A stage that the desk compensates delays the mix's other paths too, so it sets nobody apart.
 *
 * @param position where they are heard, if loudspeakers at positions make them
 * @param first the path that comes first, if none of the unknown stages is compensated
 * @param second the path that comes with it or later
 * @param toleranceSamples how far off their difference may be either way, in samples
 * @param unknown the stages that set them apart unless the desk compensates them, which is unknown
 * @param outcomes how they meet: if none of the unknown stages is compensated, if each alone is,
 *     and if all are; just one where nothing is unknown
 */
public record MixPair(
    Optional<String> position,
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

  /** Two paths of a chain, by their predicted delays, where they are both heard. */
  static MixPair of(Chain chain, Optional<String> position, Feeding one, Feeding other) {
    MixPair pair = inOrder(chain, position, one, other);
    return pair.outcomes().get(0).secondLater().samples() < 0
        ? inOrder(chain, position, other, one)
        : pair;
  }

  private static MixPair inOrder(
      Chain chain, Optional<String> position, Feeding first, Feeding second) {
    StageDifference whole = StageDifference.between(first.at(position), second.at(position));
    StageDifference loop =
        StageDifference.between(first.budget().loopStages(), second.budget().loopStages());
    Set<String> unknown = unknown(chain, whole);
    List<MixOutcome> outcomes = new ArrayList<>();
    for (Set<String> compensated : guesses(unknown)) {
      Latency apart = apart(chain, whole, compensated);
      outcomes.add(
          new MixOutcome(
              List.copyOf(compensated),
              apart,
              apart(chain, loop, compensated),
              overlap(
                  apart,
                  whole.toleranceSamples(),
                  second.entry().levelDb() - first.entry().levelDb())));
    }
    return new MixPair(
        position,
        first.entry(),
        second.entry(),
        whole.toleranceSamples(),
        List.copyOf(unknown),
        outcomes);
  }

  private static Set<String> unknown(Chain chain, StageDifference difference) {
    Set<String> names = new LinkedHashSet<>();
    for (List<StageDelay> stages : List.of(difference.added(), difference.spared())) {
      for (StageDelay stage : stages) {
        if (compensation(chain, stage) == Compensation.UNKNOWN && stage.delay().samples() > 0) {
          names.add(stage.name());
        }
      }
    }
    return names;
  }

  private static List<Set<String>> guesses(Set<String> unknown) {
    Set<Set<String>> guesses = new LinkedHashSet<>();
    guesses.add(Set.of());
    for (String stage : unknown) {
      guesses.add(Set.of(stage));
    }
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

  /** The air of a position is no stage, and nobody compensates it. */
  private static Compensation compensation(Chain chain, StageDelay stage) {
    Stage stated = chain.stages().get(stage.name());
    return stated == null ? Compensation.NO : stated.compensated();
  }

  private static Overlap overlap(Latency secondLater, double toleranceSamples, double secondDb) {
    return new Overlap(
        Math.abs(secondLater.ms()),
        new Latency(toleranceSamples, secondLater.rate()).ms(),
        secondLater.samples() < 0 ? -secondDb : secondDb);
  }
}
