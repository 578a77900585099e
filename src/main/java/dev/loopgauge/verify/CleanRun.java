package dev.loopgauge.verify;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The smallest block size that ran clean with headroom, since small blocks cost processor time and
 * large ones cost delay.
 *
 * @param dropoutsCounted whether dropouts were counted at any size
 * @param cpuWatched whether the processor was watched at any size
 * @param smallest its reading; empty where no size is known to have run clean
 */
public record CleanRun(
    boolean dropoutsCounted, boolean cpuWatched, Optional<SeriesReading> smallest) {
  /** The busiest a processor may be and still have headroom (common practice, no source). */
  public static final double BUSIEST_PERCENT = 70;

  /**
   * Looks for it. A size is clean when all that was watched was watched there, no dropout was
   * counted and the processor had headroom; and when no larger size is known to have failed, since
   * then a short run was merely lucky. Empty where nothing was watched.
   */
  public static Optional<CleanRun> of(List<SeriesReading> readings) {
    boolean dropouts = readings.stream().anyMatch(r -> r.dropouts().isPresent());
    boolean cpu = readings.stream().anyMatch(r -> r.cpuPercent().isPresent());
    if (!dropouts && !cpu) {
      return Optional.empty();
    }
    int largestFailed =
        readings.stream()
            .filter(CleanRun::failed)
            .mapToInt(SeriesReading::blockSize)
            .max()
            .orElse(0);
    return Optional.of(
        new CleanRun(
            dropouts,
            cpu,
            readings.stream()
                .filter(r -> r.blockSize() > largestFailed)
                .filter(r -> r.dropouts().isPresent() || !dropouts)
                .filter(r -> r.cpuPercent().isPresent() || !cpu)
                .min(Comparator.comparingInt(SeriesReading::blockSize))));
  }

  private static boolean failed(SeriesReading reading) {
    return reading.dropouts().orElse(0) > 0 || reading.cpuPercent().orElse(0) > BUSIEST_PERCENT;
  }
}
