package dev.loopgauge.capture.simulated;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Patch;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The ways that lead into each return, at one sample rate. */
final class Wiring {
  private final Map<Integer, List<Way>> ways = new LinkedHashMap<>();
  private final Map<String, Way> byPath = new LinkedHashMap<>();
  private final Map<String, Integer> returns = new LinkedHashMap<>();
  private final Plugs plugs;

  /**
   * What the plugs join, as the faults leave it.
   *
   * @throws FaultFormatException when a fault names a stage that the path's loop hasn't, or a path
   *     that is not plugged in
   */
  Wiring(Chain chain, Plugs plugs, List<PathFault> faults, SampleRate rate) {
    this.plugs = plugs;
    faults.forEach(this::requirePlugged);
    for (Patch cable : plugs.cables()) {
      into(cable.returned(), new Way(cable.send(), Rig.cable(rate), 1));
    }
    plugs
        .paths()
        .forEach(
            (name, patch) -> {
              List<Fault> own = faultsOf(chain, chain.path(name), faults);
              Rig rig = Rig.of(chain, chain.path(name), own, rate);
              byPath.put(name, new Way(patch.send(), rig, 1));
              returns.put(name, patch.returned());
            });
    faults.forEach(this::swap);
    byPath.forEach((name, way) -> into(returns.get(name), way));
    faults.forEach(this::leak);
  }

  /** The ways into a return, the straight cable first. */
  List<Way> into(int returned) {
    return ways.getOrDefault(returned, List.of());
  }

  /** How takes of these returns fail, where they do. */
  Optional<CardFault> failing(List<Integer> channels) {
    return channels.stream()
        .flatMap(channel -> into(channel).stream())
        .flatMap(way -> way.rig().failing().stream())
        .findFirst();
  }

  private void into(int returned, Way way) {
    ways.computeIfAbsent(returned, channel -> new ArrayList<>()).add(way);
  }

  private void requirePlugged(PathFault fault) {
    fault.path().ifPresent(this::requirePlugged);
    if (fault.fault() instanceof RoutingFault routing) {
      requirePlugged(routing.other());
    }
  }

  private void requirePlugged(String path) {
    if (!plugs.paths().containsKey(path)) {
      throw new FaultFormatException(
          "'" + path + "' has no patch, so that nothing of it is heard",
          "add patch: { send: 2, return: 2 } to the path");
    }
  }

  /** Where a fault names no path and none is measured, each path has it that can. */
  private List<Fault> faultsOf(Chain chain, ChainPath path, List<PathFault> faults) {
    return faults.stream()
        .filter(fault -> isOf(path.name(), fault))
        .filter(
            fault ->
                fault.path().isPresent()
                    || plugs.measured().isPresent()
                    || Rig.canHave(chain, path, fault.fault())
                    || nobodyCanHave(chain, fault.fault()))
        .map(PathFault::sinceItBegan)
        .toList();
  }

  private boolean nobodyCanHave(Chain chain, Fault fault) {
    return plugs.paths().keySet().stream()
        .noneMatch(name -> Rig.canHave(chain, chain.path(name), fault));
  }

  private boolean isOf(String path, PathFault fault) {
    return fault.path().or(plugs::measured).map(path::equals).orElse(true);
  }

  private void swap(PathFault fault) {
    if (fault.fault() instanceof Swapped swapped) {
      String other = swapped.other();
      for (String path : List.copyOf(returns.keySet())) {
        if (isOf(path, fault) && !path.equals(other)) {
          Integer mine = returns.get(path);
          returns.put(path, returns.get(other));
          returns.put(other, mine);
        }
      }
    }
  }

  private void leak(PathFault fault) {
    if (fault.fault() instanceof Crosstalk crosstalk) {
      Way other = byPath.get(crosstalk.other());
      byPath.keySet().stream()
          .filter(path -> isOf(path, fault) && !path.equals(crosstalk.other()))
          .forEach(
              path ->
                  into(returns.get(path), new Way(other.send(), other.rig(), crosstalk.factor())));
    }
  }
}
