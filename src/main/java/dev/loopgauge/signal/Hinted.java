package dev.loopgauge.signal;

/** A failure that says what to try. Exceptions that people read implement it. */
public interface Hinted {
  /** The failure's name in documents, such as {@code unusable-file}. */
  String code();

  /** What happened, one sentence: expected, found, where. */
  String getMessage();

  /** What to try, one sentence. */
  String hint();
}
