package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.reading.Window;
import dev.loopgauge.signal.Samples;
import java.util.Optional;

/**
 * Follows the delay of one return, window by window. The first is searched for anywhere, the
 * following near the last one that was found and anywhere only where that fails.
 *
 * <p>A few windows in a row start from the same earlier one, always the same few: so they may be
 * looked at in parallel, and a delay comes out the same whether its sound is heard as it goes by or
 * read from a recording.
 */
public final class Following {
  private static final int TOGETHER = 4;

  private final int window;
  private final double maxDelaySeconds;
  private final boolean all;
  private Optional<WindowDelay.Found> last = Optional.empty();
  private long lastAt;
  private Optional<WindowDelay.Found> before = Optional.empty();
  private long beforeAt;
  private int left = 1;

  /**
   * Nothing is known yet.
   *
   * @param window how many samples each window has
   * @param maxDelaySeconds how far to look either way
   * @param all whether to tell of the sound besides its delay
   */
  public Following(int window, double maxDelaySeconds, boolean all) {
    this.window = window;
    this.maxDelaySeconds = maxDelaySeconds;
    this.all = all;
  }

  /**
   * What one window came to.
   *
   * @param found its delay; empty where it can't be told
   * @param clipped whether the return is clipped in it
   */
  public record Look(Optional<WindowDelay.Found> found, boolean clipped) {}

  /** How many of the next windows start from the same earlier one, 1 or more. */
  public int together() {
    return left;
  }

  /**
   * Looks at one of these windows; changes nothing.
   *
   * @param from the sample of both that it starts with
   * @param at the same, counted from where all windows are counted
   */
  public Look look(Samples reference, Samples ret, int from, long at) {
    WindowDelay delay =
        new WindowDelay(new Window(reference, from, window), ret, from, maxDelaySeconds, all);
    Optional<WindowDelay.Found> found = delay.find(before.map(b -> b.later(at - beforeAt)));
    return delay.isClipped(found)
        ? new Look(found.flatMap(delay::unclipped), true)
        : new Look(found, false);
  }

  /** Goes on after the next window. */
  public void next(Look look, long at) {
    if (look.found().isPresent()) {
      last = look.found().map(found -> found.later(0));
      lastAt = at;
    }
    left--;
    if (left == 0) {
      before = last;
      beforeAt = lastAt;
      left = last.isEmpty() ? 1 : TOGETHER;
    }
  }

  /** The last delay found, in samples; empty before the first. */
  public Optional<Double> lastLag() {
    return last.map(WindowDelay.Found::lag);
  }
}
