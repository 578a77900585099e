package dev.loopgauge.plan;

import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.StageDelay;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * The stages that set two paths apart: what both pass, as often as both pass it, is left out.
 *
 * @param added what only the second passes
 * @param spared what only the first passes
 */
public record StageDifference(List<StageDelay> added, List<StageDelay> spared) {
  /** Copies the lists. */
  public StageDifference {
    added = List.copyOf(added);
    spared = List.copyOf(spared);
  }

  /** What sets the second of two paths of one chain apart from the first. */
  public static StageDifference between(PathBudget first, PathBudget second) {
    return between(first.stages(), second.stages());
  }

  /** What sets the second of two lists of stages apart from the first. */
  static StageDifference between(List<StageDelay> first, List<StageDelay> second) {
    List<StageDelay> added = new ArrayList<>(second);
    List<StageDelay> spared = new ArrayList<>();
    for (StageDelay stage : first) {
      if (!added.remove(stage)) {
        spared.add(stage);
      }
    }
    return new StageDifference(added, spared);
  }

  /** How much later those of the stages that count make the second, in samples. */
  double samples(Predicate<StageDelay> counts) {
    return sum(added, counts) - sum(spared, counts);
  }

  /** How far off the difference may be either way, in samples: the tolerances of all its stages. */
  public double toleranceSamples() {
    return tolerance(added) + tolerance(spared);
  }

  private static double sum(List<StageDelay> stages, Predicate<StageDelay> counts) {
    return stages.stream().filter(counts).mapToDouble(stage -> stage.delay().samples()).sum();
  }

  private static double tolerance(List<StageDelay> stages) {
    return stages.stream().mapToDouble(StageDelay::toleranceSamples).sum();
  }
}
