package dev.loopgauge.plan;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * How the host's computer was seen to cope at a setting.
 *
 * @param cpuPercent how busy it was, where that was noted
 * @param dropouts how often sound dropped out, where that was counted
 */
public record Load(OptionalDouble cpuPercent, OptionalInt dropouts) {
  /** Whether sound is known to have dropped out. */
  public boolean droppedOut() {
    return dropouts.orElse(0) > 0;
  }

  /** The worse of two sightings, figure by figure. */
  public Load worse(Load other) {
    return new Load(
        DoubleStream.concat(cpuPercent.stream(), other.cpuPercent.stream()).max(),
        IntStream.concat(dropouts.stream(), other.dropouts.stream()).max());
  }
}
