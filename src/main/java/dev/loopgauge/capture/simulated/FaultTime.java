package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Limits;

/**
 * When something is wrong, in seconds from the start of the take or stream.
 *
 * @param from when it begins, 0 to {@value #LONGEST}
 * @param to when it is over, after {@code from}; infinite where it never is
 */
record FaultTime(double from, double to) {
  /** All the time. */
  static final FaultTime ALWAYS = new FaultTime(0, Double.POSITIVE_INFINITY);

  private static final double LONGEST = 1_000_000;

  FaultTime {
    Limits.check("a fault's beginning", from, 0, LONGEST, "s");
    if (!(to > from)) {
      throw new IllegalArgumentException("a fault can't end at " + to + " s, it begins at " + from);
    }
  }

  /** A moment, or two with a hyphen between them. */
  static FaultTime parse(String text) {
    if (!text.contains("-")) {
      return new FaultTime(FaultFigures.one(text), Double.POSITIVE_INFINITY);
    }
    FaultFigures ends = FaultFigures.of(text, "-", 2, 2);
    Limits.check("a fault's end", ends.at(1), 0, LONGEST, "s");
    return new FaultTime(ends.at(0), ends.at(1));
  }

  /** Whether it is so at a moment. */
  boolean holdsAt(double seconds) {
    return seconds >= from && seconds < to;
  }
}
