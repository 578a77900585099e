package dev.loopgauge.chain;

import java.util.List;

/**
 * The loudspeaker that a path ends in, and where it is heard.
 *
 * @param name its name, as positions give their distance from it
 * @param positions the names of the positions that hear it, at least one, each once
 */
public record Loudspeaker(String name, List<String> positions) {
  /**
   * Copies the list.
   *
   * @throws IllegalArgumentException when there is no position, or one is listed twice
   */
  public Loudspeaker {
    positions = List.copyOf(positions);
    if (positions.isEmpty() || positions.stream().distinct().count() < positions.size()) {
      throw new IllegalArgumentException(
          "a loudspeaker must have positions, each once; '" + name + "' has " + positions);
    }
  }
}
