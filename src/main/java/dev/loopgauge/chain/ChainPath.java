package dev.loopgauge.chain;

import java.util.List;
import java.util.Optional;

/**
 * The way from a source to one listener, by the names of its stages. A stage that is passed twice
 * stands twice.
 *
 * @param name its name in the chain file
 * @param listener who hears it
 * @param stages its stages from source to listener, at least one
 * @param loop the stages that a patched measurement runs through, where they are listed
 * @param picture the picture seen with it
 * @param instrument what is played on it
 */
public record ChainPath(
    String name,
    Listener listener,
    List<String> stages,
    Optional<List<String>> loop,
    Optional<String> picture,
    Optional<Instrument> instrument) {
  /**
   * Copies the lists.
   *
   * @throws IllegalArgumentException when there are no stages, or the loop has a stage that the
   *     path has not
   */
  public ChainPath {
    stages = List.copyOf(stages);
    loop = loop.map(List::copyOf);
    if (stages.isEmpty()) {
      throw new IllegalArgumentException("a path must have a stage; '" + name + "' has none");
    }
    for (String stage : loop.orElse(List.of())) {
      if (!stages.contains(stage)) {
        throw new IllegalArgumentException(
            "a loop must be part of its path; '" + name + "' has no stage '" + stage + "'");
      }
    }
  }
}
