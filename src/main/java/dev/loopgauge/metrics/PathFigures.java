package dev.loopgauge.metrics;

import dev.loopgauge.report.watch.WatchLine;
import java.util.Map;
import java.util.Optional;

/**
 * What is served of a path at one moment.
 *
 * @param delay the delay that is read now; empty where none is
 * @param ageSeconds how long ago a delay was last read; empty where none ever was
 * @param events how many events of each kind have started
 */
record PathFigures(
    String path,
    Optional<Delay> delay,
    Optional<Double> ageSeconds,
    Map<WatchLine.Event, Long> events) {
  /** A delay with its expanded uncertainty (k = 2), both in seconds. */
  record Delay(double seconds, double uncertaintySeconds) {}
}
