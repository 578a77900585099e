package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.signal.Latency;
import java.util.OptionalDouble;

/** Something that happened to a path while it was watched. Each starts once and ends once. */
public sealed interface WatchEvent {
  /** Whether it starts, or ends. */
  enum Phase {
    /** It starts. */
    STARTS,
    /** It is over. */
    ENDS
  }

  /** Whether it starts, or ends. */
  Phase phase();

  /** When, in seconds from the start of the stream. */
  double atSeconds();

  /**
   * The delay changed all at once and stayed; it ends when the delay is as before.
   *
   * @param withinSeconds how far off that time may be either way
   * @param from the delay before
   * @param to the delay after
   * @param uncertaintySamples the expanded uncertainty of their difference, k = 2, in samples
   */
  record Step(
      Phase phase,
      double atSeconds,
      double withinSeconds,
      Latency from,
      Latency to,
      double uncertaintySamples)
      implements WatchEvent {
    /** How much later the path is since. */
    public Latency change() {
      return to.minus(from);
    }
  }

  /**
   * The delay grows or shrinks steadily.
   *
   * @param drift how fast; where it ends, what is left of it
   * @param delay the delay then
   */
  record Drift(Phase phase, double atSeconds, ClockDrift drift, Latency delay)
      implements WatchEvent {}

  /**
   * Sound that went out did not come back.
   *
   * @param ms for how long, where that is known already
   */
  record LostSound(Phase phase, double atSeconds, OptionalDouble ms) implements WatchEvent {}

  /**
   * The path turns the sound upside down, unlike before; it ends when it is as before.
   *
   * @param inverted whether it is inverted now
   */
  record Polarity(Phase phase, double atSeconds, boolean inverted) implements WatchEvent {}

  /**
   * The level changed and stayed; it ends when the level is as before.
   *
   * @param changeDb by how much, in dB
   * @param uncertaintyDb the expanded uncertainty of that, k = 2
   */
  record Level(Phase phase, double atSeconds, double changeDb, double uncertaintyDb)
      implements WatchEvent {}

  /**
   * The delay jumps to and fro between two values.
   *
   * @param usual the delay that it keeps to
   * @param other the one that it jumps to
   */
  record Groups(Phase phase, double atSeconds, Latency usual, Latency other)
      implements WatchEvent {}

  /** The reference is silent while the return sounds, so that nothing can be followed. */
  record Reference(Phase phase, double atSeconds) implements WatchEvent {}
}
