package dev.loopgauge.estimate.reading;

/** How far a delay can be looked for. */
public final class LongestDelay {
  /** The longest delay, in seconds. */
  public static final int SECONDS = 60;

  private LongestDelay() {}

  /**
   * The longest delay to look for.
   *
   * @param seconds above 0 and at most {@value #SECONDS}
   * @throws IllegalArgumentException when out of range
   */
  public static double checked(double seconds) {
    if (!(seconds > 0 && seconds <= SECONDS)) {
      throw new IllegalArgumentException(
          "the longest delay must be above 0 and at most " + SECONDS + " s, not " + seconds);
    }
    return seconds;
  }
}
