package dev.loopgauge.estimate.result;

/** Refuses what is no number, so that none of it leaves the estimator. */
final class Finite {
  private Finite() {}

  /** Refuses a value that is infinite or not a number. */
  static void check(String what, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(what + " must be a finite number, not " + value);
    }
  }

  /** Refuses an uncertainty that is negative, infinite or not a number. */
  static void checkUncertainty(String ofWhat, double value) {
    if (!(value >= 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException(
          "the uncertainty " + ofWhat + " must be 0 or more and finite, not " + value);
    }
  }
}
