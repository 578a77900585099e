package dev.loopgauge.capture.simulated;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Patch;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What is plugged into the simulated card: each path of a chain file that says its patch, and the
 * straight cables.
 *
 * @param measured the path that a command measures
 * @param paths where each path is plugged in, by its name
 * @param cables straight cables
 */
public record Plugs(Optional<String> measured, Map<String, Patch> paths, List<Patch> cables) {
  private static final int FEWEST_CHANNELS = 2;
  private static final int REFERENCE = 1;
  private static final int USUAL = 2;

  /** Copies the collections. */
  public Plugs {
    paths = Collections.unmodifiableMap(new LinkedHashMap<>(paths));
    cables = List.copyOf(cables);
  }

  /** All that a chain file says. */
  public static Plugs of(Chain chain) {
    return of(chain, Optional.empty(), new LinkedHashMap<>());
  }

  /**
   * The same for one path that is measured; what the file plugs into its return is pulled out.
   *
   * @param named where it is where the file doesn't say; empty for channel 2
   */
  public static Plugs measuring(Chain chain, ChainPath path, Optional<Patch> named) {
    Patch usual = named.orElse(straight(USUAL));
    Map<String, Patch> alone = new LinkedHashMap<>();
    alone.put(path.name(), path.patch().orElse(usual));
    return of(chain, Optional.of(path.name()), alone);
  }

  private static Plugs of(Chain chain, Optional<String> measured, Map<String, Patch> paths) {
    List<Integer> taken = paths.values().stream().map(Patch::returned).toList();
    for (ChainPath path : chain.paths().values()) {
      path.patch()
          .filter(patch -> !taken.contains(patch.returned()))
          .ifPresent(patch -> paths.putIfAbsent(path.name(), patch));
    }
    return new Plugs(measured, paths, cables(chain, paths.values().stream().toList()));
  }

  /** The reference, send 1 to return 1 where the file has none, and what paths name for it. */
  private static List<Patch> cables(Chain chain, List<Patch> patches) {
    List<Patch> cables = new ArrayList<>();
    Patch reference = chain.reference().orElse(straight(REFERENCE));
    if (chain.reference().isPresent() || !isTaken(REFERENCE, patches)) {
      cables.add(reference);
    }
    for (Patch patch : patches) {
      patch
          .against()
          .ifPresent(
              channel -> {
                if (!isTaken(channel, patches) && !isTaken(channel, cables)) {
                  cables.add(new Patch(patch.send(), channel, OptionalInt.empty()));
                }
              });
    }
    return cables;
  }

  private static boolean isTaken(int returned, List<Patch> patches) {
    return patches.stream().anyMatch(patch -> patch.returned() == returned);
  }

  private static Patch straight(int channel) {
    return new Patch(channel, channel, OptionalInt.empty());
  }

  /** How many sends the card has. */
  int sends() {
    return channels(all().mapToInt(Patch::send));
  }

  /** How many returns the card has. */
  int returns() {
    return channels(all().mapToInt(Patch::returned));
  }

  private Stream<Patch> all() {
    return Stream.concat(paths.values().stream(), cables.stream());
  }

  private static int channels(IntStream used) {
    return Math.max(FEWEST_CHANNELS, used.max().orElse(FEWEST_CHANNELS));
  }
}
