package dev.loopgauge.chain;

import java.util.List;
import java.util.Optional;

/**
 * The way of a picture, from lens to screen: either one stated delay, or stages.
 *
 * @param name its name in the chain file
 * @param frameRate pictures a second; needed where a delay is stated in frames
 * @param stated its whole delay, where no stages are named
 * @param stages the names of its stages; empty where the delay is stated
 */
public record Picture(
    String name, Optional<FrameRate> frameRate, Optional<Delay> stated, List<String> stages) {
  /**
   * Copies the list.
   *
   * @throws IllegalArgumentException when there is neither a delay nor a stage, or both, or frames
   *     are stated without a frame rate
   */
  public Picture {
    stages = List.copyOf(stages);
    if (stated.isPresent() != stages.isEmpty()) {
      throw new IllegalArgumentException(
          "a picture must have either a delay or stages; '"
              + (name + "' has " + (stages.isEmpty() ? "neither" : "both")));
    }
    if (stated.orElse(new Delay.Samples(0)) instanceof Delay.Frames && frameRate.isEmpty()) {
      throw new IllegalArgumentException(
          "frames need a frame rate; picture '" + name + "' has none");
    }
  }
}
