package dev.loopgauge.verify;

import dev.loopgauge.signal.Latency;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The delay of one rig at one block size.
 *
 * @param blockSize samples the host computed at a time, at least 1
 * @param delay what was read, 0 or more
 * @param uncertaintySamples its standard uncertainty, in samples, above 0
 * @param cpuPercent how busy the processor was, where that was watched
 * @param dropouts how many were counted, where they were
 */
public record SeriesReading(
    int blockSize,
    Latency delay,
    double uncertaintySamples,
    OptionalDouble cpuPercent,
    OptionalInt dropouts) {
  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException when block size, delay or uncertainty are out of range
   */
  public SeriesReading {
    if (blockSize < 1) {
      throw new IllegalArgumentException("a block size must be at least 1, not " + blockSize);
    }
    if (delay.samples() < 0) {
      throw new IllegalArgumentException("a host can't be early: " + delay.samples() + " samples");
    }
    if (!(uncertaintySamples > 0 && Double.isFinite(uncertaintySamples))) {
      throw new IllegalArgumentException(
          "an uncertainty must be a positive number of samples, not " + uncertaintySamples);
    }
  }
}
