package dev.loopgauge.chain;

import dev.loopgauge.signal.SampleRate;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The audio settings of a computer that runs apart from the rest of the rig. What it doesn't state
 * is as in the rig.
 *
 * @param name the computer, by its name in the chain file
 * @param blockSize samples it computes at a time, 1 to {@value Conditions#LARGEST_BLOCK}
 * @param rate its sample rate
 */
public record HostSettings(String name, OptionalInt blockSize, Optional<SampleRate> rate) {
  /**
   * Checks the block size.
   *
   * @throws IllegalArgumentException when it is out of range
   */
  public HostSettings {
    blockSize.ifPresent(Conditions::checkBlockSize);
  }

  /** The same computer at another block size. */
  public HostSettings withBlockSize(int newBlockSize) {
    return new HostSettings(name, OptionalInt.of(newBlockSize), rate);
  }

  /** The same computer at another sample rate. */
  public HostSettings withRate(SampleRate newRate) {
    return new HostSettings(name, blockSize, Optional.of(newRate));
  }

  /** What its stages are counted by, in a rig of such conditions. */
  Conditions within(Conditions rig) {
    return new Conditions(
        rate.orElse(rig.rate()),
        blockSize.orElse(rig.blockSize()),
        rig.airTemperatureC(),
        rig.frameRate());
  }
}
