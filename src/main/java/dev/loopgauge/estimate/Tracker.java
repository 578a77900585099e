package dev.loopgauge.estimate;

import dev.loopgauge.estimate.drift.TrackLine;
import dev.loopgauge.estimate.drift.WindowDelay;
import dev.loopgauge.estimate.reading.InParallel;
import dev.loopgauge.estimate.reading.LongestDelay;
import dev.loopgauge.estimate.reading.Window;
import dev.loopgauge.estimate.result.Track;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;

/**
 * Follows the delay through a long recording, window by window, in memory that doesn't grow with
 * its length.
 *
 * <p>The first delay is searched for anywhere, the following near the last one and anywhere only
 * where that fails. A few windows are worked on at a time, always the same few, so that the result
 * doesn't depend on the number of cores.
 */
public final class Tracker {
  /** The shortest window, in seconds. */
  public static final double SHORTEST_SECONDS = 0.5;

  /** The longest window, in seconds. */
  public static final double LONGEST_SECONDS = 30;

  private static final int TOGETHER = 4;

  private final double windowSeconds;
  private final double maxDelaySeconds;

  /**
   * A tracker.
   *
   * @param windowSeconds how long each window is, {@value #SHORTEST_SECONDS} to {@value
   *     #LONGEST_SECONDS}
   * @param maxDelaySeconds how far to look either way, above 0 and at most {@value
   *     LongestDelay#SECONDS}
   * @throws IllegalArgumentException when out of range
   */
  public Tracker(double windowSeconds, double maxDelaySeconds) {
    if (!(windowSeconds >= SHORTEST_SECONDS && windowSeconds <= LONGEST_SECONDS)) {
      throw new IllegalArgumentException(
          "a window must be "
              + SHORTEST_SECONDS
              + " to "
              + LONGEST_SECONDS
              + " s long, not "
              + windowSeconds);
    }
    this.windowSeconds = windowSeconds;
    this.maxDelaySeconds = LongestDelay.checked(maxDelaySeconds);
  }

  /**
   * Follows a return against its reference; both started at the same instant.
   *
   * @param progress is told how much is done, 0 to 1, now and then
   * @throws IllegalArgumentException when the rates differ or the reference is shorter than a
   *     window
   */
  public Track follow(Samples reference, Samples ret, DoubleConsumer progress) {
    SampleRate rate = reference.rate();
    int window = rate.samplesIn(windowSeconds);
    int common = Math.min(reference.length(), ret.length());
    if (!rate.equals(ret.rate()) || common < window) {
      throw new IllegalArgumentException(
          "a track needs one rate and at least one window of " + windowSeconds + " s");
    }
    int count = common / window;
    List<TrackPoint> points = new ArrayList<>();
    Optional<WindowDelay.Found> last = Optional.empty();
    int clipped = 0;
    int first = 0;
    int lastAt = 0;
    while (first < count) {
      progress.accept((double) first / count);
      int end = last.isEmpty() ? first + 1 : Math.min(first + TOGETHER, count);
      Optional<WindowDelay.Found> before = last;
      int beforeAt = lastAt;
      List<Look> looks =
          InParallel.map(
              first,
              end,
              i ->
                  look(
                      reference,
                      ret,
                      i * window,
                      before.map(b -> b.later((i - beforeAt) * window))));
      for (Look look : looks) {
        double middle = (first + 0.5) * window / rate.hertz();
        look.found().ifPresent(f -> points.add(f.at(middle, reference)));
        if (look.found().isPresent()) {
          last = look.found();
          lastAt = first;
        }
        clipped += look.clipped() ? 1 : 0;
        first++;
      }
    }
    progress.accept(1);
    return new TrackLine(windowSeconds, points).track(count - points.size(), clipped);
  }

  /** What one window came to. */
  private record Look(Optional<WindowDelay.Found> found, boolean clipped) {}

  private Look look(Samples reference, Samples ret, int from, Optional<WindowDelay.Found> before) {
    int length = reference.rate().samplesIn(windowSeconds);
    WindowDelay window =
        new WindowDelay(new Window(reference, from, length), ret, from, maxDelaySeconds);
    Optional<WindowDelay.Found> found = window.find(before);
    return window.isClipped(found)
        ? new Look(found.flatMap(window::unclipped), true)
        : new Look(found, false);
  }
}
