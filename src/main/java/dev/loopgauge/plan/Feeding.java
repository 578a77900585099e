package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Loudspeaker;
import dev.loopgauge.chain.Mix;
import dev.loopgauge.chain.MixEntry;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.Position;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A path of a mix with its budget, and the way through air to the positions that hear it.
 *
 * @param entry what the mix says of it
 * @param path the path
 * @param budget its budget
 * @param air how long its sound takes to each position, by the name of that
 */
record Feeding(MixEntry entry, ChainPath path, PathBudget budget, Map<String, Latency> air) {
  /** The paths of a mix, in its order. */
  static List<Feeding> of(Chain chain, Mix mix) {
    Map<String, PathBudget> budgets = new HashMap<>();
    for (PathBudget budget : ChainBudget.all(chain)) {
      budgets.put(budget.name(), budget);
    }
    List<Feeding> feeding = new ArrayList<>();
    for (MixEntry entry : mix.entries()) {
      feeding.add(of(chain, entry, budgets.get(entry.path())));
    }
    return feeding;
  }

  private static Feeding of(Chain chain, MixEntry entry, PathBudget budget) {
    ChainPath path = chain.path(entry.path());
    Map<String, Latency> air = new HashMap<>();
    if (path.loudspeaker().isPresent()) {
      Loudspeaker from = path.loudspeaker().get();
      for (String position : from.positions()) {
        Position seat = chain.positions().get(position);
        air.put(position, seat.throwOf(from.name(), chain.conditions()));
      }
    }
    return new Feeding(entry, path, budget, air);
  }

  /** The positions that hear both paths, in the order of this one's. */
  List<String> positionsWith(Feeding other) {
    return path.loudspeaker().map(Loudspeaker::positions).orElse(List.of()).stream()
        .filter(other.air()::containsKey)
        .toList();
  }

  /** Its stages and the air to a position. */
  List<StageDelay> at(Optional<String> position) {
    List<StageDelay> stages = new ArrayList<>(budget.stages());
    if (position.isPresent()) {
      stages.add(new StageDelay(wayTo(position.get()), air.get(position.get()), 0));
    }
    return stages;
  }

  private String wayTo(String position) {
    return "air from " + path.loudspeaker().orElseThrow().name() + " to " + position;
  }
}
