package dev.loopgauge.chain;

import java.util.List;
import java.util.Optional;

/**
 * The way of a picture, from lens to screen.
 *
 * @param name its name in the chain file
 * @param frameRate pictures a second; needed where a stage is stated in frames
 * @param stages the names of its stages, at least one
 */
public record Picture(String name, Optional<FrameRate> frameRate, List<String> stages) {
  /**
   * Copies the list.
   *
   * @throws IllegalArgumentException when there are no stages
   */
  public Picture {
    stages = List.copyOf(stages);
    if (stages.isEmpty()) {
      throw new IllegalArgumentException("a picture must have a stage; '" + name + "' has none");
    }
  }
}
