package dev.loopgauge.chain;

/**
 * Up to which delay players of an instrument called their monitors good, and fair. The answers
 * spread widely and the apparatus itself was 1.4 ms late: guidance, never a limit.
 *
 * @param goodMs the longest delay called good, in ms
 * @param fairMs the longest delay called fair, in ms
 */
public record Guidance(double goodMs, double fairMs) {
  /** Where the figures come from, a few words for the screen. */
  public static final String SOURCE = "Lester & Boley 2007, guidance only";

  /** What players called a delay. */
  public enum Rating {
    /** Good. */
    GOOD("good"),
    /** Fair. */
    FAIR("fair"),
    /** Neither. */
    WORSE("worse than fair");

    private final String label;

    Rating(String label) {
      this.label = label;
    }

    /** The name in documents. */
    public String label() {
      return label;
    }
  }

  /**
   * Checks the order.
   *
   * @throws IllegalArgumentException unless 0 &lt;= good &lt;= fair
   */
  public Guidance {
    if (!(goodMs >= 0 && goodMs <= fairMs)) {
      throw new IllegalArgumentException(
          "good must be 0 ms or more and no more than fair, not " + goodMs + " and " + fairMs);
    }
  }

  /** What a delay in ms is called. */
  public Rating rating(double delayMs) {
    if (delayMs <= goodMs) {
      return Rating.GOOD;
    }
    return delayMs <= fairMs ? Rating.FAIR : Rating.WORSE;
  }
}
