package dev.loopgauge.chain;

/**
 * The kinds of change, a row each: its name on command lines, the cause that documents call it, a
 * value as an example, and what to look at in the rig to see whether it is so.
 */
public enum ChangeKind {
  /** The host's block. */
  BLOCK_SIZE(
      "block-size", "block-size", "128", "Check the block size in the host's audio settings."),
  /** The word clock. */
  SAMPLE_RATE(
      "sample-rate",
      "sample-rate",
      "44100",
      "Check the word clock and the sample rate of desk, host and stage boxes."),
  /** A stage that isn't there. */
  ABSENT("absent", "stage-absent", "STAGE", "Is it bypassed, switched off or patched around?"),
  /** A stage passed once more. */
  TWICE("twice", "stage-twice", "STAGE", "Is it inserted or patched in two places?"),
  /** Blocks of the host more. */
  EXTRA_BLOCK("extra-block", "extra-block", "STAGE", "Was a group, send or safety buffer added?"),
  /** Blocks of the host fewer. */
  FEWER_BLOCKS(
      "fewer-blocks", "fewer-blocks", "STAGE", "Was a group, send or safety buffer removed?"),
  /** A reported delay that others compensate twice, or not at all. */
  NOT_COMPENSATED(
      "not-compensated",
      "reported-not-compensated",
      "STAGE",
      "Let host or desk compensate, not both."),
  /** The length of a way through air. */
  DISTANCE(
      "distance",
      "distance",
      "STAGE:METRES",
      "Check the distance with a tape measure, and the air temperature."),
  /** How warm the air is. */
  AIR_TEMPERATURE(
      "air-temperature", "air-temperature", "4", "Check the temperature where the listener is.");

  private final String key;
  private final String cause;
  private final String value;
  private final String check;

  ChangeKind(String key, String cause, String value, String check) {
    this.key = key;
    this.cause = cause;
    this.value = value;
    this.check = check;
  }

  /** Its name on command lines, before the equals sign. */
  public String key() {
    return key;
  }

  /** The cause, by the name that documents use. */
  public String cause() {
    return cause;
  }

  /** One change of this kind as command lines write it. */
  public String example() {
    return key + "=" + value;
  }

  /** What to look at in the rig: a sentence. */
  public String check() {
    return check;
  }
}
