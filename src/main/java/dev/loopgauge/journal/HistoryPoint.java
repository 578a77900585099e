package dev.loopgauge.journal;

import java.util.OptionalDouble;

/**
 * One entry in the history of a path.
 *
 * @param heading the entry
 * @param samples its delay at the rate of the history; empty where it had no trusted number
 * @param mark what is special about it
 */
public record HistoryPoint(Heading heading, OptionalDouble samples, Mark mark) {
  /** What is special about a reading. */
  public enum Mark {
    /** Like those before it. */
    USUAL("usual"),
    /** The first at another level that stayed. */
    STEP("step"),
    /** Too far from the others of its time to be one of them. */
    OUTLIER("outlier"),
    /** No trusted number. */
    NO_NUMBER("no-number");

    private final String label;

    Mark(String label) {
      this.label = label;
    }

    /** The name in documents. */
    public String label() {
      return label;
    }
  }
}
