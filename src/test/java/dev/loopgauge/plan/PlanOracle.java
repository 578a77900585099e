package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.Stage;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Plans the slow way: tries every combination of block size, sample rate and set of paths taken
 * from before the host, and adds up every stage of every path anew for each.
 */
final class PlanOracle {
  /** Built-in limits in ms, and EBU R37 for late sound, written out again. */
  private static final Map<Listener, Double> LIMITS =
      Map.of(Listener.IN_EAR, 5.0, Listener.WEDGE, 15.0, Listener.HOUSE, 15.0);

  private static final double LATEST_SOUND_MS = 60;
  private static final double ROUNDING_MS = 1e-9;

  /** One combination. */
  record Tried(Setting setting, Set<String> before, double apartMs, double overMs) {
    boolean fits() {
      return overMs <= ROUNDING_MS;
    }
  }

  private final PlanRequest request;

  PlanOracle(PlanRequest request) {
    this.request = request;
  }

  /** Every combination there is. */
  List<Tried> all() {
    List<String> free = new ArrayList<>();
    for (ChainPath path : request.chain().paths().values()) {
      boolean enters = path.stages().stream().anyMatch(PlanOracle::isHost);
      if (enters && request.mayLeaveHost().contains(path.name())) {
        free.add(path.name());
      }
    }
    List<Tried> all = new ArrayList<>();
    for (int blockSize : request.blockSizes()) {
      for (SampleRate rate : request.rates()) {
        for (int subset = 0; subset < 1 << free.size(); subset++) {
          Set<String> before = new HashSet<>();
          for (int i = 0; i < free.size(); i++) {
            if ((subset >> i & 1) == 1) {
              before.add(free.get(i));
            }
          }
          all.add(tried(new Setting(blockSize, rate), before));
        }
      }
    }
    return all;
  }

  /** The best combination that fits at each setting, best first. */
  List<Tried> best() {
    Map<Setting, Tried> best = new LinkedHashMap<>();
    Comparator<Tried> order = order();
    for (Tried tried : all()) {
      if (tried.fits()) {
        best.merge(
            tried.setting(), tried, (one, other) -> order.compare(one, other) <= 0 ? one : other);
      }
    }
    return best.values().stream().sorted(order).toList();
  }

  /** By how much the nearest miss misses, in ms, where nothing fits. */
  double nearestMissMs() {
    return all().stream().mapToDouble(Tried::overMs).min().orElseThrow();
  }

  private Comparator<Tried> order() {
    int own = request.chain().rate().hertz();
    return Comparator.comparingInt((Tried t) -> -t.setting().blockSize())
        .thenComparingDouble(Tried::apartMs)
        .thenComparingInt(t -> t.before().size())
        .thenComparingInt(t -> t.setting().rate().hertz() == own ? 0 : 1)
        .thenComparingInt(t -> t.setting().rate().hertz());
  }

  private Tried tried(Setting setting, Set<String> before) {
    Chain chain = request.chain();
    double apart = 0;
    double over = Double.NEGATIVE_INFINITY;
    for (ChainPath path : chain.paths().values()) {
      double samples = 0;
      for (String stage : path.stages()) {
        if (!(before.contains(path.name()) && isHost(stage))) {
          samples += samples(chain.stages().get(stage), setting);
        }
      }
      double ms = samples * 1000 / setting.rate().hertz();
      over = Math.max(over, ms - LIMITS.getOrDefault(path.listener(), Double.POSITIVE_INFINITY));
      Optional<Double> picture = path.picture().map(name -> pictureMs(chain, name));
      if (picture.isPresent()) {
        apart = Math.max(apart, Math.abs(picture.get() - ms));
        over = Math.max(over, ms - picture.get() - LATEST_SOUND_MS);
      }
    }
    return new Tried(setting, before, apart, over);
  }

  /** In these rigs the host's stages are those called so, and they stand side by side. */
  private static boolean isHost(String stage) {
    return stage.startsWith("host");
  }

  private static double samples(Stage stage, Setting setting) {
    String delay = stage.delay().toString();
    double number = Double.parseDouble(delay.substring(delay.indexOf('=') + 1, delay.length() - 1));
    if (delay.startsWith("Blocks")) {
      return number * setting.blockSize();
    }
    if (delay.startsWith("Milliseconds")) {
      return number * setting.rate().hertz() / 1000;
    }
    if (delay.startsWith("Samples")) {
      return number;
    }
    throw new AssertionError("these rigs have no " + delay);
  }

  private static double pictureMs(Chain chain, String name) {
    String delay = chain.pictures().get(name).stated().orElseThrow().toString();
    return Double.parseDouble(delay.substring(delay.indexOf('=') + 1, delay.length() - 1));
  }
}
