package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.FollowedDelay;
import java.util.Optional;

/**
 * How a path is doing.
 *
 * @param state what its last window came to
 * @param current what was read in it; empty where nothing was
 * @param last the last delay that could be trusted, which may be old; empty before the first
 * @param drift the drift that goes on
 * @param moved whether something is not as it was when the watch began
 */
public record PathStatus(
    State state,
    Optional<FollowedDelay> current,
    Optional<FollowedDelay> last,
    Optional<ClockDrift> drift,
    boolean moved) {
  /** What a window came to. */
  public enum State {
    /** Its delay was read. */
    READ,
    /** The reference is silent: nothing is played. */
    NO_PROGRAMME,
    /** What is played doesn't tell the delay, or too little of it comes back. */
    NOT_ENOUGH,
    /** The reference sounds, the return doesn't. */
    LOST_SOUND,
    /** The return sounds, the reference doesn't. */
    NO_REFERENCE,
    /** The return is clipped beyond what can be read. */
    CLIPPED,
    /** Frames were lost while the sound was recorded. */
    INTERRUPTED
  }
}
