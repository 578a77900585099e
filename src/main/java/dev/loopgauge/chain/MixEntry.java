package dev.loopgauge.chain;

/**
 * One path of a mix.
 *
 * @param path the name of the path
 * @param offsetMs how far behind the others it is meant to arrive, 0 to {@value #LARGEST_OFFSET_MS}
 *     ms: a fill or a tower kept behind the sound that it follows
 * @param levelDb how loud it is where the mix is heard, in dB against the others, {@value
 *     #LOWEST_DB} to {@value #HIGHEST_DB}
 */
public record MixEntry(String path, double offsetMs, double levelDb) {
  /** The largest offset accepted, in ms. */
  public static final double LARGEST_OFFSET_MS = 1_000;

  /** The lowest level accepted, in dB. */
  public static final double LOWEST_DB = -100;

  /** The highest level accepted, in dB. */
  public static final double HIGHEST_DB = 100;

  /**
   * Checks both ranges.
   *
   * @throws IllegalArgumentException when one is out of range
   */
  public MixEntry {
    check("offset in ms", offsetMs, 0, LARGEST_OFFSET_MS);
    check("level in dB", levelDb, LOWEST_DB, HIGHEST_DB);
  }

  private static void check(String what, double value, double lowest, double highest) {
    if (!(value >= lowest && value <= highest)) {
      throw new IllegalArgumentException(
          what + " must be " + lowest + " to " + highest + ", not " + value);
    }
  }
}
