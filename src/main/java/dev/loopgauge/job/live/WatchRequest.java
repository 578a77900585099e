package dev.loopgauge.job.live;

import dev.loopgauge.job.kept.KeepChoice;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What to watch.
 *
 * @param chain the chain file, whose paths say where they are patched
 * @param profile the name of a kept profile
 * @param device on which device
 * @param windowSeconds how long each window is, 0.5 to 30 s
 * @param stepSeconds how much later each window starts than the one before
 * @param minutes for how long; empty until somebody has enough
 * @param rig what is wrong with the built-in rig
 * @param keep whether to keep each event
 */
public record WatchRequest(
    Path chain,
    Optional<String> profile,
    DeviceChoice device,
    double windowSeconds,
    double stepSeconds,
    Optional<Double> minutes,
    RigChoice rig,
    KeepChoice keep) {
  /** How much sound each reading takes where nothing else is said, in seconds. */
  public static final double USUAL_WINDOW_SECONDS = 2;

  /** How much later each window starts where nothing else is said, in seconds. */
  public static final double USUAL_STEP_SECONDS = 1;
}
