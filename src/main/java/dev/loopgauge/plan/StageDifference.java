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
      int same = indexOf(added, stage.name());
      if (same < 0) {
        spared.add(stage);
      } else {
        added.remove(same);
      }
    }
    return new StageDifference(added, spared);
  }

  /** A chain has no two stages of one name. */
  private static int indexOf(List<StageDelay> stages, String name) {
    for (int i = 0; i < stages.size(); i++) {
      if (stages.get(i).name().equals(name)) {
        return i;
      }
    }
    return -1;
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
    double samples = 0;
    for (StageDelay stage : stages) {
      samples += counts.test(stage) ? stage.delay().samples() : 0;
    }
    return samples;
  }

  private static double tolerance(List<StageDelay> stages) {
    double samples = 0;
    for (StageDelay stage : stages) {
      samples += stage.toleranceSamples();
    }
    return samples;
  }
}
