package dev.loopgauge.chain;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a path's return should be like, besides its delay.
 *
 * @param inverted whether it comes back with its polarity turned; not expected where left out
 * @param level how loud it is, where that is to be judged
 * @param responseToleranceDb how far each octave may be from the path's mean level either way, in
 *     dB, 0 to 100, where that is to be judged
 */
public record Expectation(
    Optional<Boolean> inverted, Optional<ExpectedLevel> level, OptionalDouble responseToleranceDb) {
  /** Nothing stated. */
  public static final Expectation NONE =
      new Expectation(Optional.empty(), Optional.empty(), OptionalDouble.empty());

  /**
   * Checks the tolerance.
   *
   * @throws IllegalArgumentException when it is out of range
   */
  public Expectation {
    if (responseToleranceDb.isPresent()) {
      checkTolerance(responseToleranceDb.getAsDouble());
    }
  }

  static void checkTolerance(double db) {
    if (!(db >= 0 && db <= ExpectedLevel.LARGEST_DB)) {
      throw new IllegalArgumentException(
          "a tolerance must be 0 to " + ExpectedLevel.LARGEST_DB + " dB, not " + db);
    }
  }
}
