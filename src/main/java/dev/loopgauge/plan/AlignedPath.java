package dev.loopgauge.plan;

import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.ListenerLimits;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.signal.Latency;
import java.util.OptionalDouble;

/**
 * What to add to one path of a mix.
 *
 * @param path its name
 * @param listener who hears it
 * @param limits how late that listener may hear
 * @param delay how late it is in the mix without it
 * @param offset how far behind the others it is meant to arrive
 * @param add what to set, 0 or more, a whole number of the desk's steps
 * @param left how much later than meant it arrives then; negative when earlier
 */
public record AlignedPath(
    String path,
    Listener listener,
    ListenerLimits limits,
    PathDelay delay,
    Latency offset,
    Latency add,
    Latency left) {
  /** The lowest frequency at which what is left cancels, in Hz; empty where nothing is left. */
  public OptionalDouble firstNullHz() {
    return firstNullHz(left);
  }

  /** The same for any two copies of a sound. */
  static OptionalDouble firstNullHz(Latency apart) {
    return new Comb(Math.abs(apart.ms()), 0).firstNullHz();
  }

  /**
   * Whether a performer's limit is passed with the delay added. The house's limit counts from the
   * stage, and says nothing of fills and towers; those are meant to wait.
   */
  public boolean passesLimit() {
    boolean performer = listener == Listener.IN_EAR || listener == Listener.WEDGE;
    return performer && limits.standing(delay.delay().plus(add).ms()) == Standing.OVER;
  }
}
