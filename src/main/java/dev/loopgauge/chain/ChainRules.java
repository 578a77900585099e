package dev.loopgauge.chain;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What must hold between the parts of a chain.
 *
 * @param stages the stages by name
 * @param pictures the pictures by name
 * @param hosts the computers by name
 * @param positions the positions by name
 */
record ChainRules(
    Map<String, Stage> stages,
    Map<String, Picture> pictures,
    Map<String, HostSettings> hosts,
    Map<String, Position> positions) {
  /** Checks all of it. */
  void check(Collection<ChainPath> paths, Collection<Mix> mixes) {
    for (Stage stage : stages.values()) {
      require(hosts.keySet(), stage.host());
    }
    Set<String> known = new HashSet<>();
    for (ChainPath path : paths) {
      require(pictures.keySet(), path.picture());
      checkStages(path.stages(), false);
      if (path.loudspeaker().isPresent()) {
        checkLoudspeaker(path, path.loudspeaker().get());
      }
      known.add(path.name());
    }
    for (Picture picture : pictures.values()) {
      checkStages(picture.stages(), picture.frameRate().isPresent());
    }
    for (Mix mix : mixes) {
      for (MixEntry entry : mix.entries()) {
        require(known, entry.path());
      }
    }
  }

  private void checkStages(List<String> names, boolean frames) {
    for (String name : names) {
      require(stages.keySet(), name);
      if (stages.get(name).delay() instanceof Delay.Frames && !frames) {
        throw new IllegalArgumentException(
            "frames need a picture with a frame rate; stage '" + name + "' is used without");
      }
    }
  }

  private void checkLoudspeaker(ChainPath path, Loudspeaker loudspeaker) {
    for (String name : path.stages()) {
      if (stages.get(name).delay().isAir()) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "a path with a loudspeaker must have no air of its own; '%s' has '%s'",
                path.name(),
                name));
      }
    }
    for (String name : loudspeaker.positions()) {
      require(positions.keySet(), name);
      Position position = positions.get(name);
      require(position.throwMetres().keySet(), loudspeaker.name());
      if (position.directMetres().isPresent() && path.direct().isPresent()) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "the direct sound must be stated once; '%s' and position '%s' both do",
                path.name(),
                name));
      }
    }
  }

  private static void require(Collection<String> known, Optional<String> name) {
    if (name.isPresent()) {
      require(known, name.get());
    }
  }

  private static void require(Collection<String> known, String name) {
    if (!known.contains(name)) {
      throw new IllegalArgumentException("names must be defined in the chain, not '" + name + "'");
    }
  }
}
