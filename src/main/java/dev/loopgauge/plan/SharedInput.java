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
    return byInput.entrySet().stream()
        .filter(entry -> entry.getValue().size() > 1)
        .map(entry -> of(entry.getKey(), entry.getValue()))
        .toList();
  }

  private static SharedInput of(String input, List<PathBudget> paths) {
    List<PathBudget> sorted =
        paths.stream().sorted(Comparator.comparingDouble(p -> p.delay().samples())).toList();
    PathBudget fastest = sorted.get(0);
    return new SharedInput(
        input,
        fastest,
        sorted.stream()
            .skip(1)
            .map(
                path ->
                    new Destination(
                        path,
                        path.delay().minus(fastest.delay()),
                        StageDifference.between(fastest, path)))
            .toList());
  }
}
