package dev.loopgauge.plan;

import dev.loopgauge.chain.Judged;
import java.util.Optional;

/**
 * A limit that a path would not keep.
 *
 * @param setting at which block size and sample rate
 * @param path the path
 * @param kind which delay is limited
 * @param reachedMs that delay, in ms
 * @param limitMs the most it may be, in ms
 * @param rule where the limit comes from
 * @param earlier the path that the delay is counted from, where it is one: that one lacks delay
 */
public record Breach(
    Setting setting,
    String path,
    Kind kind,
    double reachedMs,
    double limitMs,
    String rule,
    Optional<String> earlier) {
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

  /** A listener hears a path too late. */
  static Breach ofListener(Setting setting, Feed feed, Judged judged) {
    return new Breach(
        setting,
        feed.path(),
        Kind.LISTENER,
        judged.ms(),
        feed.limits().limitMs().orElseThrow(),
        feed.limits().rule(),
        judged.earlier());
  }

  /** By how much it is not kept, in ms. */
  public double overMs() {
    return reachedMs - limitMs;
  }
}
