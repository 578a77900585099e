package dev.loopgauge.chain;

import java.util.List;

/**
 * One thing about a rig that is not as its chain file says. Applied to a chain it gives the chain
 * as it would then be: forwards to ask what would happen, backwards to find out what did.
 */
public sealed interface Change permits RigChange, StageChange {
  /** One of each kind, as {@link #parse} reads them. */
  List<String> EXAMPLES =
      List.of(
          "block-size=128",
          "sample-rate=44100",
          "absent=STAGE",
          "twice=STAGE",
          "extra-block=STAGE",
          "fewer-blocks=STAGE",
          "not-compensated=STAGE",
          "distance=STAGE:METRES");

  /**
   * Reads a change as command lines write it, such as {@code block-size=256} or {@code
   * absent=limiter}.
   *
   * @throws ChangeFormatException when there is no such change, or its value can't be one
   */
  static Change parse(String text) {
    return ChangeFormat.parse(text);
  }

  /** The change as {@link #parse} reads it. */
  String written();

  /** The kind of change, by the name that documents use. */
  String cause();

  /**
   * The chain with this change.
   *
   * @throws ChangeFormatException when the chain has nothing that could change so
   */
  Chain on(Chain chain);

  /** What is different, with the old value and the new one: part of a sentence. */
  String told(Chain before);

  /** What to look at in the rig to see whether it is so: part of a sentence. */
  String check();
}
