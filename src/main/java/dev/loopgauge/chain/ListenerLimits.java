package dev.loopgauge.chain;

import java.util.OptionalDouble;

/**
 * How late a listener may hear. Both limits are inclusive: a delay of exactly the limit is within
 * it.
 *
 * @param cautionMs the delay from which some begin to notice, in ms; empty where none is known
 * @param limitMs the longest delay that passes, in ms; empty where delay alone does no harm
 * @param rule where the limits come from, a few words for the screen
 */
public record ListenerLimits(OptionalDouble cautionMs, OptionalDouble limitMs, String rule) {
  /** Keeps arithmetic rounding from pushing a delay over a limit it meets exactly, in ms. */
  private static final double ROUNDING_MS = 1e-9;

  /**
   * Checks both limits.
   *
   * @throws IllegalArgumentException when one is negative or not a number, or the caution lies
   *     above the limit
   */
  public ListenerLimits {
    check("caution", cautionMs);
    check("limit", limitMs);
    if (limitMs.isPresent() && beyond(cautionMs.orElse(0), limitMs)) {
      throw new IllegalArgumentException(
          "caution must not exceed the limit of "
              + (limitMs.getAsDouble() + " ms, not " + cautionMs.getAsDouble()));
    }
  }

  /**
   * The limits of a listener that no chain file speaks of.
   *
   * <p>In-ear: a delayed copy of the own voice is noticed from 3-5 ms and objectionable above 10
   * ms: Agnew and Thornton, J Am Acad Audiol 11(6), 2000 (the issuer's abstract). Wedge and house:
   * common practice, no source.
   */
  public static ListenerLimits builtIn(Listener listener) {
    return switch (listener) {
      case IN_EAR ->
          new ListenerLimits(
              OptionalDouble.of(3),
              OptionalDouble.of(5),
              "own voice is noticeably late from 3-5 ms: Agnew & Thornton 2000");
      case WEDGE ->
          new ListenerLimits(
              OptionalDouble.of(10),
              OptionalDouble.of(15),
              "a wedge becomes a problem between 10 and 15 ms: common practice, no source");
      case HOUSE ->
          new ListenerLimits(
              OptionalDouble.empty(),
              OptionalDouble.of(15),
              "up to 15 ms passes unnoticed but in the front rows: common practice, no source");
      case STREAM ->
          new ListenerLimits(
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              "no limit on delay alone: stream viewers don't hear the stage, only lip sync counts");
    };
  }

  private static void check(String name, OptionalDouble ms) {
    if (ms.isPresent() && !(ms.getAsDouble() >= 0 && ms.getAsDouble() <= Delay.LARGEST)) {
      throw new IllegalArgumentException(
          name + " must be 0 to " + Delay.LARGEST + " ms, not " + ms.getAsDouble());
    }
  }

  /** How a delay in ms stands against these limits. */
  public Standing standing(double delayMs) {
    if (beyond(delayMs, limitMs)) {
      return Standing.OVER;
    }
    return beyond(delayMs, cautionMs) ? Standing.CAUTION : Standing.WITHIN;
  }

  private static boolean beyond(double ms, OptionalDouble limit) {
    return limit.isPresent() && ms > limit.getAsDouble() + ROUNDING_MS;
  }
}
