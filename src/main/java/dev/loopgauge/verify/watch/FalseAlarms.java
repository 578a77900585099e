package dev.loopgauge.verify.watch;

/**
 * How often something may be told that isn't there. The aim: 100 hours of one path, or ten paths
 * through ten hours, end without a false event in 99 cases of 100.
 */
final class FalseAlarms {
  /** False events in an hour of one path, all kinds together. */
  static final double PER_HOUR = 1e-4;

  /** What is tested for by chance: steps and drifts of the delay, and levels. */
  private static final int KINDS = 3;

  private static final double HOUR = 3600;

  private FalseAlarms() {}

  /**
   * The chance that one test may have.
   *
   * @param secondsApart how long it is from one test of a kind to the next
   * @param places how many tests are made at a time
   */
  static double perTest(double secondsApart, int places) {
    return PER_HOUR / KINDS * secondsApart / HOUR / places;
  }
}
