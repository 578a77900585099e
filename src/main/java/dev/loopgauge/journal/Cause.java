package dev.loopgauge.journal;

/**
 * What may have made a path later or earlier.
 *
 * @param name the kind, by the name that documents use
 * @param text one sentence
 * @param standing how sure it is
 */
public record Cause(String name, String text, Standing standing) {
  /** How sure a cause is. */
  public enum Standing {
    /** The journal has it, and it makes this difference, by the chain file or by its nature. */
    EXPLAINS("explains"),
    /** The journal has that it changed; what it makes isn't known or doesn't fit. */
    RECORDED("recorded"),
    /** Nothing in the journal says so; it would make just this difference. */
    LIKELY("likely");

    private final String label;

    Standing(String label) {
      this.label = label;
    }

    /** The name in documents. */
    public String label() {
      return label;
    }
  }
}
