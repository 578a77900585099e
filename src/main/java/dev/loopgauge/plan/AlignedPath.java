package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.ListenerLimits;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.signal.Latency;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What to add to one path of a mix.
 *
 * @param arrival what is predicted of it in the mix
 * @param delay how late it is in the mix without it
 * @param source where that figure is from, in words
 * @param outsideBudget whether it is a reading that is not as the budget says
 * @param offset how far behind the others it is meant to arrive
 * @param add what to set, 0 or more, a whole number of the desk's steps
 * @param left how much later than meant it arrives then; negative when earlier
 * @param meets the path that it then meets, itself for that one
 * @param position where they meet, if loudspeakers at positions make them
 * @param part what part it takes
 */
public record AlignedPath(
    MixArrival arrival,
    SourcedDelay delay,
    String source,
    boolean outsideBudget,
    Latency offset,
    Latency add,
    Latency left,
    Optional<String> meets,
    Optional<String> position,
    Part part) {
  /** What part a path takes in an alignment. */
  public enum Part {
    /** It meets the others of its input. */
    MEETS,
    /** A performer hears it, who is not to hear later. */
    HELD,
    /** No other path carries its input to the same place. */
    ALONE;

    /** The name in documents. */
    public String label() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Its name. */
  public String path() {
    return arrival.path().name();
  }

  /** Who hears it. */
  public Listener listener() {
    return arrival.path().listener();
  }

  /** How late that listener may hear. */
  public ListenerLimits limits() {
    return arrival.path().limits();
  }

  /** The lowest frequency at which what is left cancels, in Hz; empty where nothing is left. */
  public OptionalDouble firstNullHz() {
    return firstNullHz(left);
  }

  /** The same for any two copies of a sound. */
  static OptionalDouble firstNullHz(Latency apart) {
    return new Comb(Math.abs(apart.ms()), 0).firstNullHz();
  }

  /** Whether the desk can't add as much as it would need, and it stays too early. */
  public boolean exceedsDesk(DeskStep step, Chain chain) {
    return -left.samples() > step.samples(chain);
  }

  /**
   * Whether a performer's limit is passed with the delay added. The house's limit counts from what
   * its seat hears first, and says nothing of fills and towers; those are meant to wait.
   */
  public boolean passesLimit() {
    return AlignRequest.performs(listener())
        && part == Part.MEETS
        && limits().standing(arrival.judged().ms() + shifted()) == Standing.OVER;
  }

  /** How much later it is than predicted in the mix, in ms. */
  private double shifted() {
    return delay.delay().plus(add).minus(arrival.delay()).ms();
  }
}
