package dev.loopgauge.verify;

import dev.loopgauge.estimate.result.Measurement;
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
  /** A delay is a whole number of samples or near it: half a sample, rectangular (GUM). */
  static final double LEAST_UNCERTAINTY = 0.5 / Math.sqrt(3);

  /**
   * A reading that was measured.
   *
   * @param blockSize samples the host computed at a time
   * @param measured its delay, 0 or more
   * @param dropouts how many were counted meanwhile
   * @throws IllegalArgumentException when block size or delay are out of range
   */
  public static SeriesReading of(int blockSize, Measurement measured, int dropouts) {
    return new SeriesReading(
        blockSize,
        measured.delay(),
        Math.max(LEAST_UNCERTAINTY, measured.uncertaintySamples() / Measurement.COVERAGE_FACTOR),
        OptionalDouble.empty(),
        OptionalInt.of(dropouts));
  }

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
