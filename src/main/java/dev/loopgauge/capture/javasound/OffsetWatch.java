package dev.loopgauge.capture.javasound;

import java.util.OptionalLong;

/**
 * Watches that what is played and what is recorded stay together.
 *
 * <p>A device counts the frames that it has played and those that it has recorded. While nothing is
 * lost, the difference of the two stays the same but for the steps in which they are counted; each
 * lost frame shifts it for good. The mean over a window of at least eight steps tells the two
 * apart. A window is compared with the two before it, so that a shift in the midst of a window
 * shows as well; two clocks that run apart by what clocks do, far below one frame in a window,
 * don't show.
 *
 * <p>Not thread-safe.
 */
final class OffsetWatch {
  private static final int STEPS_PER_WINDOW = 8;

  private final long shortestWindow;
  private final double smallestShift;
  private long lastPlayed;
  private long lastRecorded;
  private long step = Long.MAX_VALUE;
  private long windowStart = -1;
  private double sum;
  private int looks;
  private double previous = Double.NaN;
  private double beforePrevious = Double.NaN;
  private long verified;

  /**
   * A watch that notices shifts of a millisecond and more, or of half a step where steps are
   * coarser.
   */
  OffsetWatch(int rateHertz) {
    this.shortestWindow = rateHertz / 10;
    this.smallestShift = rateHertz / 1000.0;
  }

  /**
   * Takes a look at both counts; call it every few milliseconds or more often.
   *
   * @return by how many frames the two have come apart, when they have
   */
  OptionalLong look(long played, long recorded) {
    step = Math.min(step, stepFrom(lastPlayed, played));
    step = Math.min(step, stepFrom(lastRecorded, recorded));
    lastPlayed = played;
    lastRecorded = recorded;
    if (windowStart < 0) {
      windowStart = recorded;
    }
    sum += recorded - played;
    looks++;
    boolean full = recorded - windowStart >= shortestWindow && step < Long.MAX_VALUE;
    return full && (recorded - windowStart) / STEPS_PER_WINDOW >= step
        ? close(recorded)
        : OptionalLong.empty();
  }

  /** By how many frames recording is ahead of playing; 0 before a window is full. */
  double offset() {
    return Double.isNaN(previous) ? 0 : previous;
  }

  /** The smallest step in which frames are counted; large before there was one. */
  long step() {
    return step;
  }

  /** Up to which recorded frame nothing has come apart. */
  long verified() {
    return verified;
  }

  private OptionalLong close(long recorded) {
    double mean = sum / looks;
    double shift = Math.max(distance(mean, previous), distance(mean, beforePrevious));
    if (shift > Math.max(smallestShift, step / 2.0)) {
      return OptionalLong.of(Math.round(shift));
    }
    beforePrevious = previous;
    previous = mean;
    verified = windowStart;
    windowStart = recorded;
    sum = 0;
    looks = 0;
    return OptionalLong.empty();
  }

  private static double distance(double mean, double earlier) {
    return Double.isNaN(earlier) ? 0 : Math.abs(mean - earlier);
  }

  private static long stepFrom(long before, long now) {
    return now > before ? now - before : Long.MAX_VALUE;
  }
}
