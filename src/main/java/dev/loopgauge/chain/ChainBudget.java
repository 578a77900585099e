package dev.loopgauge.chain;

import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Turns what a chain file states into the predicted delay of a path. */
public final class ChainBudget {
  private ChainBudget() {}

  /**
   * The budget of one path at the chain's own rate, block size and temperature. Its loop is all its
   * stages but those of air, unless the path lists one.
   *
   * @throws IllegalArgumentException when the path is not of this chain
   */
  public static PathBudget of(Chain chain, ChainPath path) {
    check(chain, path);
    return of(chain, path, Hearing.around(chain, path));
  }

  /**
   * The delay of the whole path alone, as its budget has it.
   *
   * @throws IllegalArgumentException when the path is not of this chain
   */
  public static Latency delay(Chain chain, ChainPath path) {
    check(chain, path);
    return PathBudget.sum(delays(chain, path.stages()), chain.rate());
  }

  private static void check(Chain chain, ChainPath path) {
    if (!Objects.equals(path, chain.paths().get(path.name()))) {
      throw new IllegalArgumentException(
          "a path must belong to its chain; '" + path.name() + "' does not");
    }
  }

  /** The budgets of all paths of a chain, in its order. */
  public static List<PathBudget> all(Chain chain) {
    Hearing hearing = Hearing.predicted(chain);
    List<PathBudget> budgets = new ArrayList<>();
    for (ChainPath path : chain.paths().values()) {
      budgets.add(of(chain, path, hearing));
    }
    return budgets;
  }

  private static PathBudget of(Chain chain, ChainPath path, Hearing hearing) {
    return new PathBudget(
        path.name(),
        path.listener(),
        chain.limits().get(path.listener()),
        chain.rate(),
        Air.metresPerSecond(chain.airTemperatureC()),
        delays(chain, path.stages()),
        delays(chain, path.loop().isPresent() ? path.loop().get() : withoutAir(chain, path)),
        hearing.seats(path),
        hearing.judged(path));
  }

  private static List<String> withoutAir(Chain chain, ChainPath path) {
    List<String> names = new ArrayList<>();
    for (String name : path.stages()) {
      if (!chain.stages().get(name).delay().isAir()) {
        names.add(name);
      }
    }
    return names;
  }

  private static List<StageDelay> delays(Chain chain, List<String> names) {
    List<StageDelay> delays = new ArrayList<>();
    for (String name : names) {
      delays.add(delay(chain, chain.stages().get(name)));
    }
    return delays;
  }

  private static StageDelay delay(Chain chain, Stage stage) {
    return new StageDelay(stage.name(), chain.delay(stage), chain.toleranceSamples(stage));
  }
}
