package dev.loopgauge.estimate;

import dev.loopgauge.estimate.drift.Following;
import dev.loopgauge.estimate.drift.TrackLine;
import dev.loopgauge.estimate.reading.InParallel;
import dev.loopgauge.estimate.reading.LongestDelay;
import dev.loopgauge.estimate.result.Track;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;

/**
 * Follows the delay through a long recording, window by window, in memory that doesn't grow with
 * its length.
 *
 * <p>A few windows are worked on at a time, always the same few ({@link Following}), so that the
 * result doesn't depend on the number of cores.
 */
public final class Tracker {
  /** The shortest window, in seconds. */
  public static final double SHORTEST_SECONDS = 0.5;

  /** The longest window, in seconds. */
  public static final double LONGEST_SECONDS = 30;

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
    checkWindow(windowSeconds);
    this.windowSeconds = windowSeconds;
    this.maxDelaySeconds = LongestDelay.checked(maxDelaySeconds);
  }

  /** Checks the length of a window, in seconds. */
  static void checkWindow(double windowSeconds) {
    if (!(windowSeconds >= SHORTEST_SECONDS && windowSeconds <= LONGEST_SECONDS)) {
      throw new IllegalArgumentException(
          "a window must be "
              + SHORTEST_SECONDS
              + " to "
              + LONGEST_SECONDS
              + " s long, not "
              + windowSeconds);
    }
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
    Following following = new Following(window, maxDelaySeconds, false);
    List<TrackPoint> points = new ArrayList<>();
    int clipped = 0;
    int first = 0;
    while (first < count) {
      progress.accept((double) first / count);
      int end = Math.min(first + following.together(), count);
      List<Following.Look> looks =
          InParallel.map(
              first, end, i -> following.look(reference, ret, i * window, (long) i * window));
      for (Following.Look look : looks) {
        double middle = (first + 0.5) * window / rate.hertz();
        look.found().ifPresent(found -> points.add(found.at(middle, rate)));
        following.next(look, (long) first * window);
        clipped += look.clipped() ? 1 : 0;
        first++;
      }
    }
    progress.accept(1);
    return new TrackLine(windowSeconds, points).track(count - points.size(), clipped);
  }
}
