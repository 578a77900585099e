package dev.loopgauge.chain;

import dev.loopgauge.signal.Latency;
import java.util.List;

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
    double samples =
        delays(chain, path.stages()).stream().mapToDouble(stage -> stage.delay().samples()).sum();
    return new Latency(samples, chain.rate());
  }

  private static void check(Chain chain, ChainPath path) {
    if (!path.equals(chain.paths().get(path.name()))) {
      throw new IllegalArgumentException(
          "a path must belong to its chain; '" + path.name() + "' does not");
    }
  }

  /** The budgets of all paths of a chain, in its order. */
  public static List<PathBudget> all(Chain chain) {
    Hearing hearing = Hearing.predicted(chain);
    return chain.paths().values().stream().map(path -> of(chain, path, hearing)).toList();
  }

  private static PathBudget of(Chain chain, ChainPath path, Hearing hearing) {
    return new PathBudget(
        path.name(),
        path.listener(),
        chain.limits().get(path.listener()),
        chain.rate(),
        Air.metresPerSecond(chain.airTemperatureC()),
        delays(chain, path.stages()),
        delays(chain, path.loop().orElseGet(() -> withoutAir(chain, path.stages()))),
        hearing.seats(path),
        hearing.judged(path));
  }

  private static List<String> withoutAir(Chain chain, List<String> names) {
    return names.stream().filter(name -> !chain.stages().get(name).delay().isAir()).toList();
  }

  private static List<StageDelay> delays(Chain chain, List<String> names) {
    return names.stream().map(name -> delay(chain, chain.stages().get(name))).toList();
  }

  private static StageDelay delay(Chain chain, Stage stage) {
    return new StageDelay(stage.name(), chain.delay(stage), chain.toleranceSamples(stage));
  }
}
