package dev.loopgauge.chain;

/**
 * One thing about a rig that is not as its chain file says. Applied to a chain it gives the chain
 * as it would then be: forwards to ask what would happen, backwards to find out what did.
 */
public sealed interface Change permits RigChange, HostChange, StageChange, PlaceChange {
  /** What kind of change it is. */
  ChangeKind kind();

  /** Its value as command lines write it, behind the equals sign. */
  String value();

  /** The change as command lines write it, such as {@code absent=limiter}. */
  default String written() {
    return kind().key() + "=" + value();
  }

  /** The kind of change, by the name that documents use. */
  default String cause() {
    return kind().cause();
  }

  /**
   * The chain with this change.
   *
   * @throws ChangeFormatException when the chain has nothing that could change so
   */
  Chain on(Chain chain);

  /** What is different, with the old value and the new one: part of a sentence. */
  String told(Chain before);

  /** What to look at in the rig to see whether it is so: a sentence. */
  default String check() {
    return kind().check();
  }
}
