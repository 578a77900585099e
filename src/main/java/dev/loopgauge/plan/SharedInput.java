package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Where one input goes, side by side. Paths carry one input when they name the same {@code input};
 * those that name none do when they begin with the same stage.
 *
 * @param input its name
 * @param fastest the path that arrives first
 * @param others the others, fastest first, at least one
 */
public record SharedInput(String input, PathBudget fastest, List<Destination> others) {
  /**
   * A path that arrives later than the fastest, or with it.
   *
   * @param path the path
   * @param later how much later it arrives
   * @param stages which stages make it so
   */
  public record Destination(PathBudget path, Latency later, StageDifference stages) {}

  /** Copies the list. */
  public SharedInput {
    others = List.copyOf(others);
  }

  /** The inputs that go to several of these paths of the chain, in the order of the paths. */
  public static List<SharedInput> among(Chain chain, List<PathBudget> paths) {
    Map<String, List<PathBudget>> byInput = new LinkedHashMap<>();
    for (PathBudget path : paths) {
      String input = chain.path(path.name()).input();
      byInput.computeIfAbsent(input, name -> new ArrayList<>()).add(path);
    }
    List<SharedInput> shared = new ArrayList<>();
    for (Map.Entry<String, List<PathBudget>> entry : byInput.entrySet()) {
      if (entry.getValue().size() > 1) {
        shared.add(of(entry.getKey(), entry.getValue()));
      }
    }
    return shared;
  }

  private static SharedInput of(String input, List<PathBudget> paths) {
    List<PathBudget> sorted = new ArrayList<>(paths);
    sorted.sort(Comparator.comparingDouble(path -> path.delay().samples()));
    PathBudget fastest = sorted.get(0);
    List<Destination> others = new ArrayList<>();
    for (PathBudget path : sorted.subList(1, sorted.size())) {
      Latency later = path.delay().minus(fastest.delay());
      others.add(new Destination(path, later, StageDifference.between(fastest, path)));
    }
    return new SharedInput(input, fastest, others);
  }
}
