package dev.loopgauge.capture.javasound;

/** Which way sound goes through a line. */
enum Direction {
  /** Out of the computer. */
  SEND("send", "play to"),
  /** Into the computer. */
  RETURN("return", "record from");

  private final String word;
  private final String purpose;

  Direction(String word, String purpose) {
    this.word = word;
    this.purpose = purpose;
  }

  /** The word for one of its channels. */
  String word() {
    return word;
  }

  /** What a device of this direction is there for: "play to". */
  String purpose() {
    return purpose;
  }
}
