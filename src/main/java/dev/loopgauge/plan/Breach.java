package dev.loopgauge.plan;

/**
 * A limit that a path would not keep.
 *
 * @param setting at which block size and sample rate
 * @param path the path
 * @param kind which delay is limited
 * @param reachedMs that delay, in ms
 * @param limitMs the most it may be, in ms
 * @param rule where the limit comes from
 */
public record Breach(
    Setting setting, String path, Kind kind, double reachedMs, double limitMs, String rule) {
  /** Which delay is limited. */
  public enum Kind {
    /** From source to listener. */
    LISTENER("listener"),
    /** Of the sound behind its picture. */
    PICTURE("picture");

    private final String label;

    Kind(String label) {
      this.label = label;
    }

    /** The name in documents. */
    public String label() {
      return label;
    }
  }

  /** By how much it is not kept, in ms. */
  public double overMs() {
    return reachedMs - limitMs;
  }
}
