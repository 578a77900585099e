package dev.loopgauge.capture;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.SampleRate;

/**
 * Tells a feedback loop from a late arrival, while the take still runs.
 *
 * <p>In the stretches in which nothing plays, sound dies away. A loop whose gain is above one grows
 * by the same number of decibels in each equal time instead. The guard measures windows of 50 ms
 * and trips when {@value #RISING_WINDOWS} in a row were each louder than the one before, by {@value
 * #RISE_DB} dB in all, and the last is above {@value #FLOOR_DB} dBFS. A late stimulus jumps once
 * and then stays level. (Common practice, no source: the numbers were chosen so that a loop is
 * caught within about half a second and no stimulus of this project trips them.)
 *
 * <p>Not thread-safe; one for each take. It allocates nothing after construction.
 */
public final class FeedbackGuard {
  private static final double WINDOW_SECONDS = 0.05;
  private static final int RISING_WINDOWS = 5;
  private static final double RISE_DB = 6;
  private static final double FLOOR_DB = -50;

  private final Take take;
  private final int window;
  private final double rise = Decibels.toFactor(RISE_DB);
  private final double floor = Decibels.toFactor(FLOOR_DB);
  private int next;
  private int rising;
  private double first;
  private double last = Double.POSITIVE_INFINITY;

  /** A guard for one take. */
  public FeedbackGuard(Take take, SampleRate rate) {
    this.take = take;
    this.window = rate.samplesIn(WINDOW_SECONDS);
  }

  /**
   * Looks at what has been recorded so far. Call it every few ten milliseconds.
   *
   * @param returns one array for each return, filled up to {@code frames}
   * @param frames how many frames have been recorded
   * @return whether a feedback loop is growing, so that playing must stop at once
   */
  public boolean trips(float[][] returns, int frames) {
    while (next + window <= frames) {
      if (isListening(next, next + window)) {
        follow(loudest(returns, next));
      } else {
        rising = 0;
        last = Double.POSITIVE_INFINITY;
      }
      next += window;
      if (rising >= RISING_WINDOWS && last > floor && last > first * rise) {
        return true;
      }
    }
    return false;
  }

  private void follow(double level) {
    if (level > last) {
      rising++;
    } else {
      rising = 0;
      first = level;
    }
    last = level;
  }

  private boolean isListening(int from, int to) {
    for (Take.Segment segment : take.listening()) {
      if (from >= segment.from() && to <= segment.to()) {
        return true;
      }
    }
    return false;
  }

  private double loudest(float[][] returns, int from) {
    double loudest = 0;
    for (float[] channel : returns) {
      double sum = 0;
      for (int i = from; i < from + window; i++) {
        sum += (double) channel[i] * channel[i];
      }
      loudest = Math.max(loudest, Math.sqrt(sum / window));
    }
    return loudest;
  }
}
