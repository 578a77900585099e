package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Listener;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What is to be aligned, and within what.
 *
 * @param chain the chain
 * @param loops the measured loops by the names of their paths, all of one state; the other paths
 *     are predicted
 * @param to the path that the mixes which have it are to meet; elsewhere, or if empty, it is the
 *     latest
 * @param step the steps in which the desk sets delays
 * @param mayDelay the performers that may hear later: in-ears and wedges are left alone otherwise
 * @param longestMs the longest delay that the desk can set, in ms, above 0
 */
public record AlignRequest(
    Chain chain,
    Map<String, MeasuredLoop> loops,
    Optional<String> to,
    DeskStep step,
    Set<Listener> mayDelay,
    OptionalDouble longestMs) {
  /**
   * Copies the maps.
   *
   * @throws IllegalArgumentException when loops of several states are mixed, or the longest delay
   *     is not above 0
   */
  public AlignRequest {
    loops = Map.copyOf(loops);
    mayDelay = Set.copyOf(mayDelay);
    List<String> states =
        loops.values().stream().flatMap(loop -> loop.state().stream()).distinct().sorted().toList();
    if (states.size() > 1) {
      throw new IllegalArgumentException(
          "measured loops must be of one state, not " + String.join(" and ", states));
    }
    if (longestMs.isPresent() && !(longestMs.getAsDouble() > 0)) {
      throw new IllegalArgumentException(
          "the longest delay must be above 0 ms, not " + longestMs.getAsDouble());
    }
  }

  /** With these loops as measured, and no performer that may be delayed. */
  public static AlignRequest of(
      Chain chain, Map<String, MeasuredLoop> loops, Optional<String> to, DeskStep step) {
    return new AlignRequest(chain, loops, to, step, Set.of(), OptionalDouble.empty());
  }

  /** The same where these performers may be delayed too. */
  public AlignRequest delaying(Set<Listener> performers) {
    return new AlignRequest(chain, loops, to, step, performers, longestMs);
  }

  /** The same on a desk that delays by no more than this, in ms. */
  public AlignRequest atMost(double ms) {
    return new AlignRequest(chain, loops, to, step, mayDelay, OptionalDouble.of(ms));
  }

  /** Whether a listener's paths may be delayed. */
  boolean mayDelay(Listener listener) {
    return !performs(listener) || mayDelay.contains(listener);
  }

  static boolean performs(Listener listener) {
    return listener == Listener.IN_EAR || listener == Listener.WEDGE;
  }
}
