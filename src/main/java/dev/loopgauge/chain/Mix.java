package dev.loopgauge.chain;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Paths that are heard together.
 *
 * @param name its name in the chain file
 * @param entries the paths, at least one, each once
 */
public record Mix(String name, List<MixEntry> entries) {
  /**
   * Copies the list.
   *
   * @throws IllegalArgumentException when there are no paths, or one is listed twice
   */
  public Mix {
    entries = List.copyOf(entries);
    if (entries.isEmpty()) {
      throw new IllegalArgumentException("a mix must have a path; '" + name + "' has none");
    }
    Set<String> paths = new HashSet<>();
    for (MixEntry entry : entries) {
      if (!paths.add(entry.path())) {
        throw new IllegalArgumentException(
            "a mix must have each path once; '" + name + "' has '" + entry.path() + "' twice");
      }
    }
  }
}
