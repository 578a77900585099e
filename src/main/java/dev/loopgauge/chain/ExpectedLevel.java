package dev.loopgauge.chain;

/**
 * How loud a path's return is expected to be.
 *
 * @param levelDb against its reference, in dB, -{@value #LARGEST_DB} to {@value #LARGEST_DB}
 * @param toleranceDb how far off that may be either way, in dB, 0 to {@value #LARGEST_DB}
 */
public record ExpectedLevel(double levelDb, double toleranceDb) {
  /** The largest figure accepted, in dB. */
  public static final double LARGEST_DB = 100;

  /** How far off a level may be where no tolerance is stated, in dB: common practice, no source. */
  public static final double USUAL_TOLERANCE_DB = 1;

  /**
   * Checks both ranges.
   *
   * @throws IllegalArgumentException when one is out of range
   */
  public ExpectedLevel {
    if (!(Math.abs(levelDb) <= LARGEST_DB)) {
      throw new IllegalArgumentException(
          "an expected level must be within " + LARGEST_DB + " dB of 0, not " + levelDb);
    }
    Expectation.checkTolerance(toleranceDb);
  }
}
